/** Published checks of the collection that are not computed here, with the reason. */
export const leftOut: Readonly<Record<string, string>> = {};
