import type { RuledPlace, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';

/** A rule that restricts nothing, unless said otherwise. */
export const aRule = (changes: Partial<WateringRule> = {}): WateringRule => ({
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
  ...changes,
});

/** A place of which nothing is known but what is said. */
export const place = (changes: Partial<RuledPlace> = {}): RuledPlace => ({
  addressNumber: null,
  water: null,
  stations: [],
  rain: [],
  ...changes,
});
