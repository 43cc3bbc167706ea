export const property = {};
