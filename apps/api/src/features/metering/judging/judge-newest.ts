import { type JudgedRegister, type MeterScale, type RegisterAt, RegisterHistory } from '@rillbook/metering/intervals/register-history.js';

/** A reading to be judged; one that was replaced says nothing of the next. */
export interface KeptRegister extends RegisterAt {
  readonly id: string;
  readonly replacedById: string | null;
}

/**
 * Judges a meter's newest readings, each by those before it that nothing has replaced.
 *
 * @param newestFirst at one instant the one that stands comes first
 * @param whole whether the meter has no older ones
 */
export function judgeNewest(meter: MeterScale, newestFirst: readonly KeptRegister[], whole: boolean): Map<string, JudgedRegister> {
  const history = new RegisterHistory(meter, whole);
  return new Map([...newestFirst].reverse().map((row) => [row.id, row.replacedById ? history.judge(row) : history.follow(row)]));
}
