const DAY_MS = 86_400_000;

/** Whether a day is the last of its month. */
export const isWholeMonth = (through: string): boolean => new Date(Date.parse(`${through}T00:00:00Z`) + DAY_MS).getUTCDate() === 1;
