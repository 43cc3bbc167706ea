export const overview = {};
