import { detailsOf } from '../../../says/reason.js';
import { aboutVolume, messageOf, type Saying } from '../../../says/saying.js';
import { isByMonth, isByRate, isTooLittle } from '../list/water-of-kind.js';
import type { ToldFinding } from './told-finding.js';

type Watered = Pick<ToldFinding, 'kind' | 'litres' | 'money' | 'fromOn' | 'untilOn' | 'says'>;

/** Water and money of a finding, with the time they are of: a month at this rate, the newest month that it was judged by, or once. */
export function waterOf(saying: Saying, finding: Watered): string {
  const { kind, litres, money } = finding;
  if (typeof litres !== 'number') return said(saying, kind === 'doubtful reading' ? 'reading' : 'unknown', {});
  return said(saying, messageFor(finding), {
    litres: aboutVolume(saying.formats, litres),
    money: typeof money === 'number' ? saying.formats.money(money) : 'none',
    times: detailsOf(finding.says).number('spells') ?? 1,
    ...monthOf(saying, finding),
  });
}

const said = (saying: Saying, which: string, values: Record<string, string | number>): string =>
  messageOf(saying, `told.water.${which}`, values) ?? '';

function messageFor({ kind, says, untilOn }: Watered): string {
  if (says.code === 'sources-contradict') return 'sourcesDiffer';
  if (kind === 'doubtful reading') return 'claimed';
  if (kind === 'flow to be tested') return 'differs';
  const isLittle = isTooLittle(kind);
  if (isByRate(kind)) return isLittle ? 'tooLittlePerMonth' : 'perMonth';
  if (!isByMonth(kind)) return 'once';
  const period = isWhole(untilOn) ? 'OfMonth' : 'PartOfMonth';
  return isLittle ? `tooLittle${period}` : period.charAt(0).toLowerCase() + period.slice(1);
}

/** Whether a day is the last of its month. */
function isWhole(day: string | null | undefined): boolean {
  if (!day) return true;
  const next = new Date(`${day}T00:00:00Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.getUTCDate() === 1;
}

/** What is judged by months is told by its newest, however long ago it began. */
function monthOf({ formats }: Saying, { fromOn, untilOn }: Watered): { month: string; days: string } {
  if (!untilOn) return { month: formats.month(fromOn), days: formats.days(fromOn, untilOn) };
  const first = `${untilOn.slice(0, 7)}-01`;
  return { month: formats.month(untilOn), days: formats.days(fromOn && fromOn > first ? fromOn : first, untilOn) };
}
