export const findings = {};
