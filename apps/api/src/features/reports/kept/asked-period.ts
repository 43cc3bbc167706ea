import { platformProblems } from '../../../platform/problems/platform.problems.js';

/** A report is of whole months: accounts have no smaller part that could be set beside a need. */
export function judgeWholeMonths({ fromOn, untilOn }: { readonly fromOn: string; readonly untilOn: string }): void {
  const after = new Date(`${untilOn}T00:00:00Z`);
  after.setUTCDate(after.getUTCDate() + 1);
  if (!fromOn.endsWith('-01'))
    throw platformProblems.valueRefused({ field: 'fromOn', found: fromOn, expected: 'the first day of a month' });
  if (after.getUTCDate() !== 1)
    throw platformProblems.valueRefused({ field: 'untilOn', found: untilOn, expected: 'the last day of a month' });
}
