import type { Quantity } from '@rillbook/units/quantity.js';
import type { RuledPlace, RuledStation, WateringRule } from '../rules/watering-rule.js';
import type { ControllerTraits } from '../settings/controller-traits.js';
import type { Program } from '../settings/settings-fact.js';
import type { PlanWeights } from './plan-weights.js';

/** How a zone's soil takes water: what decides how long a cycle may be. [mm/h] and [mm] */
export interface ZoneIntake {
  readonly precipitationRate: Quantity<'mm/h'>;
  readonly intakeRate: Quantity<'mm/h'>;
  readonly surfaceAccumulation: Quantity<'mm'>;
}

/**
 * A zone of the controller in one month: what it needs through the valve, and what its soil and line allow.
 *
 * `storageDays` is how many days of use the root zone bridges, fractions included (null: nobody knows, no limit); `intake` null is no limit to
 * a cycle; `fillMinutes` is what a slow line takes before water comes out at each start.
 */
export interface ZoneToPlan extends RuledStation {
  readonly zoneId: string;
  readonly needLitresPerDay: number;
  readonly flowLPerMin: number;
  readonly storageDays: number | null;
  readonly intake: ZoneIntake | null;
  readonly fillMinutes: number;
}

/** Hours in which the controller may water, in minutes after midnight; an end before the beginning reaches over midnight. [min] */
export interface WaterWindow {
  readonly from: number;
  readonly until: number;
}

/**
 * A controller and the month that it is planned for: what it holds, what it is set to (null: not known), its zones, the rules and the place.
 * `flowLimitLPerMin` is what meter and main carry; null where nobody knows.
 */
export interface PlanInput {
  readonly month: string;
  readonly traits: ControllerTraits;
  readonly zones: readonly ZoneToPlan[];
  readonly present: readonly Program[] | null;
  readonly rules: readonly WateringRule[];
  readonly place: Pick<RuledPlace, 'addressNumber' | 'water'>;
  readonly window: WaterWindow;
  readonly flowLimitLPerMin: number | null;
  readonly weights: PlanWeights;
}
