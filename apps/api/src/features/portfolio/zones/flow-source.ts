/** Where a zone's flow is known from. */
export const flowSources = ['measured', 'nameplate', 'assumed'] as const;
export type FlowSource = (typeof flowSources)[number];
