export const identity = {};
