/** Kinds that tell of water that did not run: their gallons are missing, and cost nothing. */
export const isTooLittle = (kind: string): boolean => kind === 'under-programmed' || kind === 'not delivering';
