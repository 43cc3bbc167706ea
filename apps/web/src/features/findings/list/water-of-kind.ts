/** Kinds that tell of water that did not run: their gallons are missing, and cost nothing. */
export const isTooLittle = (kind: string): boolean => kind === 'under-programmed' || kind === 'not delivering';

const BY_RATE: ReadonlySet<string> = new Set([
  'overwatered',
  'unexplained use',
  'not delivering',
  'steady flow',
  'off-schedule run',
  'zone flow changed',
  'flow to be tested',
]);

/** Kinds that a meter tells as a rate: their gallons are those of a month at that rate, and not those that passed since. */
export const isByRate = (kind: string): boolean => BY_RATE.has(kind);
