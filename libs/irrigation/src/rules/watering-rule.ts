import type { IrrigationMethod } from '../hardware/irrigation-method.js';
import type { Weekday } from '../settings/settings-fact.js';

/** The days that a rule allows: days of the week, odd or even days of the month, or none. */
export type AllowedDays =
  | { readonly kind: 'weekdays'; readonly weekdays: readonly Weekday[] }
  | { readonly kind: 'odd' }
  | { readonly kind: 'even' }
  | { readonly kind: 'none' };

/**
 * A local restriction on watering; null restricts nothing, or applies to everything.
 *
 * `addressParity` says to which addresses the rule applies; where it restricts nothing else, they may water on days of the month of their own
 * parity. Blocked hours are minutes after local midnight and may reach over it. `maxMinutes` is what a station may run on a day.
 */
export interface WateringRule {
  readonly name: string;
  readonly allowedDays: AllowedDays | null;
  readonly daysPerWeek: number | null;
  readonly addressParity: 'odd' | 'even' | null;
  readonly blockedFrom: number | null;
  readonly blockedUntil: number | null;
  readonly maxMinutes: number | null;
  readonly hoursAfterRain: number | null;
  /** Least rain that counts; null: any that is measured. [mm] */
  readonly rainMm: number | null;
  readonly plants: readonly string[] | null;
  readonly exemptMethods: readonly IrrigationMethod[] | null;
  readonly water: readonly string[] | null;
  readonly effectiveFrom: string | null;
  readonly effectiveUntil: string | null;
}

/** What a station waters, as far as rules ask; null where nobody has said: then the rule applies. */
export interface RuledStation {
  readonly station: number;
  readonly plants: string | null;
  readonly method: IrrigationMethod | null;
}

/**
 * Rain that fell, and when it ended at the earliest and at the latest, in elapsed minutes: a day's rain whose hour is not known ended between
 * that day's midnights.
 */
export interface RainThatEnded {
  readonly mm: number;
  readonly endedFrom: number;
  readonly endedUntil: number;
}

/** Whom and what the rules meet: the number of the address (null: not known, no rule of parity is applied), its water, stations and rain. */
export interface RuledPlace {
  readonly addressNumber: number | null;
  readonly water: string | null;
  readonly stations: readonly RuledStation[];
  readonly rain: readonly RainThatEnded[];
}
