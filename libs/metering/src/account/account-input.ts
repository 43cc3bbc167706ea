import type { ClockChange } from '@rillbook/irrigation/calendar/clock-change.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { RainPause } from '@rillbook/irrigation/settings/rain-pause.js';
import type { SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { UsageInterval } from '../intervals/usage-interval.js';
import type { FlowSource } from '../uncertainty/default-relative-sd.js';
import type { AccountDay } from '../volumes/weather-series.js';

/** The inputs of a zone that may stand on a documented default instead of a record. */
export type AssumedInput = 'plantFactor' | 'density' | 'shade' | 'rawMm' | 'duLq' | 'areaM2' | 'flowLPerMin';

/**
 * One zone. `meterId`: a meter's id; `none` is unmetered; null is the property's only meter, or not assigned where it has several.
 * `handWatered` zones have no controller and stand on their own line.
 */
export interface AccountZone {
  readonly id: string;
  readonly name: string;
  readonly meterId: string | null;
  readonly handWatered: boolean;
  readonly handLitresPerWeek: number | null;
  readonly controllerId: string | null;
  readonly station: number | null;
  readonly areaM2: number;
  readonly plantFactor: number;
  readonly density: number;
  readonly shade: number;
  readonly rawMm: number;
  readonly tawMm: number;
  readonly duLq: number;
  readonly leachingFraction: number;
  readonly flowLPerMin: number | null;
  readonly flowSource: FlowSource;
  readonly assumed: readonly AssumedInput[];
  /** Share of the plants' establishment that has passed, below 1; absent where they are grown. [–] */
  readonly establishedShare?: number;
}

/** One controller with all its facts up to the month's end (planned ones are ignored) and its rain pauses. */
export interface AccountController {
  readonly id: string;
  readonly traits: ControllerTraits;
  readonly facts: readonly SettingsFact[];
  readonly pauses: readonly RainPause[];
}

/**
 * One meter. On a mixed meter the indoor share is `indoorLitresPerDay` where stated, else `winterLitresPerDay` (the mean of winter months
 * with neither need nor program), else the metered volume is absent. Intervals: all that touch the month, of every source.
 */
export interface AccountMeter {
  readonly id: string;
  readonly kind: 'irrigation' | 'mixed';
  readonly indoorLitresPerDay: number | null;
  readonly winterLitresPerDay: number | null;
  readonly intervals: readonly UsageInterval[];
}

/** What limits the property's water. `etaf` and `specialLandscapeAreaM2` are the ordinance's; a contract is twelve months, January first. */
export type Allowance =
  | { readonly from: 'ordinance'; readonly etaf: number; readonly specialLandscapeAreaM2: number }
  | { readonly from: 'contract'; readonly litresPerMonth: readonly number[] };

/**
 * What one month account of one property is computed from, but for the weather.
 *
 * `month` is 'YYYY-MM'; `through` the last complete local date (the running month's four volumes cover the same days), null when there is
 * none; `clockChanges` are those of the property's time zone from the day before the month to its end.
 */
export interface AccountFacts {
  readonly month: string;
  readonly through: string | null;
  readonly zones: readonly AccountZone[];
  readonly controllers: readonly AccountController[];
  readonly meters: readonly AccountMeter[];
  readonly allowance: Allowance | null;
  readonly clockChanges: readonly ClockChange[];
}

/**
 * All that one month account is computed from: `days` run from 90 days before the month (later if weather starts later), maybe with holes, and
 * as far as intervals that touch the month reach.
 */
export interface AccountInput extends AccountFacts {
  readonly days: readonly AccountDay[];
}
