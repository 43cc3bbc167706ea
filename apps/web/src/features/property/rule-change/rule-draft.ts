import type { WateringRuleInput } from '../../../graphql/__generated__/graphql.js';

/** A supplier's new rule as it is typed. */
export interface RuleDraft {
  readonly name: string;
  readonly daysPerWeek: string;
  readonly allowedDays: string;
  readonly blockedFrom: string;
  readonly blockedUntil: string;
  readonly effectiveFrom: string;
  /** The rule that ends the day before; empty is none. */
  readonly replaces: string;
}

/** What is wrong with a rule as typed. */
export type RuleProblem = 'name' | 'daysPerWeek' | 'blocked' | 'nothing';

export const emptyRule = (today: string): RuleDraft => ({
  ...{ name: '', daysPerWeek: '', allowedDays: '', blockedFrom: '', blockedUntil: '' },
  ...{ effectiveFrom: today, replaces: '' },
});

const DAYS = 7;

/** The first thing that keeps the draft from being a rule; null where it is one. */
export function problemOfRule(draft: RuleDraft): RuleProblem | null {
  if (!draft.name.trim()) return 'name';
  if (draft.daysPerWeek && !isDays(Number(draft.daysPerWeek))) return 'daysPerWeek';
  if (Boolean(draft.blockedFrom) !== Boolean(draft.blockedUntil)) return 'blocked';
  return draft.daysPerWeek || draft.allowedDays.trim() || draft.blockedFrom ? null : 'nothing';
}

const isDays = (count: number): boolean => Number.isInteger(count) && count >= 0 && count <= DAYS;

/** The rule as it is asked about and kept. */
export const ruleInput = (supplierId: string, draft: RuleDraft): WateringRuleInput => ({
  supplierId,
  name: draft.name.trim(),
  daysPerWeek: draft.daysPerWeek ? Number(draft.daysPerWeek) : null,
  allowedDays: draft.allowedDays.trim() || null,
  blockedFrom: draft.blockedFrom || null,
  blockedUntil: draft.blockedUntil || null,
  effectiveFrom: draft.effectiveFrom || null,
});
