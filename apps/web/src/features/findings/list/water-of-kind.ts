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
  'mixed water needs',
]);

const BY_MONTH: ReadonlySet<string> = new Set(['over-programmed', 'under-programmed', 'over allowance']);

const FROM_RECORDS: ReadonlySet<string> = new Set(['breaks a rule', 'stale', 'mixed water needs']);

/** Kinds that are told as a rate: their gallons are those of a month at that rate, and not those that passed since. */
export const isByRate = (kind: string): boolean => BY_RATE.has(kind);

/** Kinds that a month's account tells: their gallons are those of the newest month, however long ago they began. */
export const isByMonth = (kind: string): boolean => BY_MONTH.has(kind);

/** What is read and not measured: there is nothing that chance could have done. */
export const isFromRecords = (kind: string): boolean => FROM_RECORDS.has(kind);
