import { defaultPlanWeights } from '@rillbook/irrigation/planning/plan-weights.js';
import type { PlanInput, ZoneIntake, ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';

/** A rule that restricts nothing yet. */
export const noRule: WateringRule = {
  name: 'rule',
  allowedDays: null,
  daysPerWeek: null,
  addressParity: null,
  blockedFrom: null,
  blockedUntil: null,
  maxMinutes: null,
  hoursAfterRain: null,
  rainMm: null,
  plants: null,
  exemptMethods: null,
  water: null,
  effectiveFrom: null,
  effectiveUntil: null,
};

/** Rate, intake and accumulation as American texts print them. [in/h], [in/h] and [in] */
export const intakeInInches = (rate: number, intake: number, accumulation: number): ZoneIntake => ({
  precipitationRate: millimetresPerHourFromInchesPerHour(rate),
  intakeRate: millimetresPerHourFromInchesPerHour(intake),
  surfaceAccumulation: millimetresFromInches(accumulation),
});

/** A zone of 100 m2 that needs some inches a day at some inches an hour. */
export function zoneInInches(station: number, inchesPerDay: number, inchesPerHour: number, more: Partial<ZoneToPlan> = {}): ZoneToPlan {
  return {
    zoneId: `zone ${station}`,
    station,
    plants: null,
    method: null,
    needLitresPerDay: inchesPerDay * 25.4 * 100,
    flowLPerMin: (inchesPerHour * 25.4 * 100) / 60,
    storageDays: null,
    intake: null,
    fillMinutes: 0,
    ...more,
  };
}

/** A controller of four programs with whole minutes that can pause between cycles, for July. */
export function aController(zones: readonly ZoneToPlan[], more: Partial<PlanInput> = {}): PlanInput {
  return {
    month: '2026-07',
    traits: {
      stations: 24,
      programs: 4,
      startsPerProgram: 4,
      maxMinutes: 240,
      minuteStep: 1,
      adjustScope: 'program',
      adjustStepPercent: 5,
      maxAdjustPercent: 200,
      monthlyAdjustPercent: null,
      runsAtOnce: null,
      cycleSoak: true,
      rainSensor: null,
      rainSensorMm: null,
    },
    zones,
    present: null,
    rules: [],
    place: { addressNumber: 12, water: 'potable' },
    window: { from: 0, until: 360 },
    flowLimitLPerMin: null,
    weights: defaultPlanWeights,
    ...more,
  };
}
