import type { Address } from '../../page/use-address.js';

/** The steps of a stop, in the order in which hands do them; `arrive` is before the first. */
export const STEPS = ['meter', 'settings', 'zones', 'tests', 'done'] as const;
export type Step = (typeof STEPS)[number] | 'arrive';

export interface StopPlace {
  readonly step: Step;
  /** Which meter, controller or zone of the step; the first where none is named. */
  readonly thing: string | null;
}

const stepOf = (found: string | null): Step => STEPS.find((step) => step === found) ?? 'arrive';

export const stopAddress: Address<StopPlace> = {
  read: (query) => ({ step: stepOf(query.get('step')), thing: query.get('thing') }),
  write: ({ step, thing }) => ({ step: step === 'arrive' ? null : step, thing }),
};

/** The address of a stop, or of one step of it. */
export function stopPath(id: string, step: Step = 'arrive', thing: string | null = null): string {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(stopAddress.write({ step, thing }))) if (value) query.set(key, value);
  return `/today/${id}${query.size ? `?${query.toString()}` : ''}`;
}

export interface DayPlace {
  /** YYYY-MM-DD; the organization's today where none is named. */
  readonly day: string | null;
  readonly crew: string | null;
}

const dayIn = (found: string | null): string | null =>
  found && /^\d{4}-\d{2}-\d{2}$/.test(found) && !Number.isNaN(Date.parse(found)) ? found : null;

export const dayAddress: Address<DayPlace> = {
  read: (query) => ({ day: dayIn(query.get('day')), crew: query.get('crew') }),
  write: ({ day, crew }) => ({ day, crew }),
};

/** What is on this phone, and what was sent from it. */
export const PHONE_PATH = '/today/phone';

/** The day's list that a stop belongs to. */
export const dayPath = (day: string, crew: string | null = null): string => `/today?day=${day}${crew ? `&crew=${crew}` : ''}`;

const DAY_MS = 86_400_000;

/** So many days after a day of the calendar. */
export const daysAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
