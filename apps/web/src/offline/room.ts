/** How much of the phone's room for this site is taken. */
export interface Room {
  readonly used: number;
  readonly whole: number;
  /** plenty; getting full; so full that saving may fail */
  readonly state: 'plenty' | 'tight' | 'full';
}

/** Warned before it is too late; and what is kept back so that text can still be saved. */
const TIGHT = 0.8;
const RESERVE_BYTES = 20 * 1024 * 1024;

/** The judgement of two numbers that the browser tells. */
export function roomOf(used: number, whole: number): Room {
  const left = whole - used;
  const state = left < RESERVE_BYTES ? 'full' : used / whole >= TIGHT ? 'tight' : 'plenty';
  return { used, whole, state };
}

/** How much room there is, or null where the browser does not tell. */
export async function roomOnPhone(): Promise<Room | null> {
  const told = await navigator.storage?.estimate?.();
  return told?.usage !== undefined && told.quota ? roomOf(told.usage, told.quota) : null;
}

/** Asks the browser to keep what is here also when room is short. It may say no. */
export async function askToKeep(): Promise<boolean> {
  return (await navigator.storage?.persist?.()) ?? false;
}
