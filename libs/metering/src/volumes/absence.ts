/** Why a volume or gap is absent. The screens make the sentence from code and details. */
export type AbsenceCode =
  | 'no-complete-day'
  | 'no-zones'
  | 'no-meter'
  | 'no-allowance'
  | 'allowance-is-for-the-property'
  | 'weather-missing'
  | 'readings-missing'
  | 'indoor-not-known'
  | 'settings-not-known'
  | 'settings-from-weather'
  | 'flow-not-known'
  | 'no-controller'
  | 'hand-volume-not-known'
  | 'zones-not-assigned'
  | 'meter-without-zones'
  | 'volume-absent';

/** Code and details of an absence; details name zones, meters, volumes, dates or the share of the month that is missing. */
export interface Absence {
  readonly code: AbsenceCode;
  readonly details: Readonly<Record<string, string | number | readonly string[]>>;
}

/**
 * An absence with its details.
 *
 * @param code - Why the value is absent. [code]
 * @param details - The zones, meters, volumes or dates that it is about. [any]
 * @returns The absence. [code]
 */
export function absence(code: AbsenceCode, details: Absence['details'] = {}): Absence {
  return { code, details };
}
