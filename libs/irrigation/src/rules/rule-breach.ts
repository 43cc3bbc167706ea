import type { AllowedDays } from './watering-rule.js';

/** How a rule is broken. */
export type BreachKind =
  | 'must not be watered'
  | 'day not allowed'
  | 'too many days a week'
  | 'blocked hours'
  | 'too many minutes'
  | 'too soon after rain';

/** What to change so that the rule is kept: the one of these that the kind asks for is not null. */
export interface ToKeepRule {
  readonly allowedDays: AllowedDays | null;
  readonly daysPerWeek: number | null;
  /** Hours in which nothing may run, in minutes after midnight. [min] */
  readonly blocked: { readonly from: number; readonly until: number } | null;
  readonly maxMinutes: number | null;
  readonly pauseHours: number | null;
}

/** A rule that a program's settings break: with which stations, how often in the days looked at, when first, and what to change. */
export interface RuleBreach {
  readonly rule: string;
  readonly kind: BreachKind;
  readonly program: string;
  readonly stations: readonly number[];
  readonly times: number;
  readonly firstDate: string;
  readonly lastDate: string;
  readonly toKeep: ToKeepRule;
}
