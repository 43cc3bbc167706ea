import { Temporal } from 'temporal-polyfill';
import { platformProblems } from '../../../platform/problems/platform.problems.js';

const MOST_MONTHS = 12;

/** A report is of whole months, for accounts have no smaller part that could be set beside a need: of a year at most, and none that has yet to begin. */
export function judgeWholeMonths({ fromOn, untilOn }: { readonly fromOn: string; readonly untilOn: string }): void {
  const after = new Date(`${untilOn}T00:00:00Z`);
  after.setUTCDate(after.getUTCDate() + 1);
  if (!fromOn.endsWith('-01'))
    throw platformProblems.valueRefused({ field: 'fromOn', found: fromOn, expected: 'the first day of a month' });
  if (after.getUTCDate() !== 1)
    throw platformProblems.valueRefused({ field: 'untilOn', found: untilOn, expected: 'the last day of a month' });
  const until = Temporal.PlainDate.from(untilOn);
  const today = Temporal.Now.plainDateISO('UTC');
  const ofThisMonth = today.with({ day: today.daysInMonth });
  if (Temporal.PlainDate.compare(until, ofThisMonth) > 0)
    throw platformProblems.valueRefused({
      field: 'untilOn',
      found: untilOn,
      expected: `no month after this one, which ends on ${ofThisMonth.toString()}`,
    });
  if (Temporal.PlainDate.compare(Temporal.PlainDate.from(fromOn).add({ months: MOST_MONTHS }), until) <= 0)
    throw platformProblems.valueRefused({ field: 'fromOn', found: fromOn, expected: `a period of ${MOST_MONTHS} months at most` });
}
