import { type FindingCode, findingSentence, findingValues, raised } from '../../../says/finding-sentence.js';
import { type Details, detailsOf, type Reason } from '../../../says/reason.js';
import { messageOf, type Saying, wordOf } from '../../../says/saying.js';
import { isFromRecords } from '../list/water-of-kind.js';
import type { ToldFinding } from './told-finding.js';
import { waterOf } from './water-of.js';

type Values = Record<string, string | number>;

/** What nobody measured is not told as surer than this. */
const SUREST = 0.99;

/** A finding as one sentence: what was seen, since when, how sure, water and money, and what to look at first; what is not known says so. */
export function toldSentence(saying: Saying, finding: ToldFinding): string {
  const { intl } = saying;
  const values = valuesOf(saying, finding.says);
  return intl.formatMessage(
    { id: 'told.sentence' },
    {
      // It may begin with a zone, whose name stands in sentences otherwise: 'zone 2 (Lawn)'.
      what: raised(whatOf(saying, finding, values)),
      when: whenOf(saying, finding),
      sure: sureOf(saying, finding),
      water: waterOf(saying, finding),
      first: (values && messageOf(saying, `told.first.${finding.says.code}`, values)) ?? intl.formatMessage({ id: 'told.first.other' }),
    },
  );
}

/** The values of a code's sentence, and how long its settings stood still; null for a code of a later version. */
function valuesOf(saying: Saying, says: Reason): Values | null {
  if (!Object.hasOwn(findingValues, says.code)) return null;
  const details = detailsOf(says);
  return { ...findingValues[says.code as FindingCode](saying, details), ...stillness(saying, details) };
}

function stillness({ formats }: Saying, details: Details): Values {
  const [days, fell] = [details.number('unchangedDays'), details.number('needChangePercent')];
  const isTold = days !== null && fell !== null && fell < 0;
  return { unchanged: isTold ? formats.number(days) : 'none', fell: isTold ? formats.percent(-fell / 100) : 'none' };
}

function whatOf(saying: Saying, { kind, says }: ToldFinding, values: Values | null): string {
  const what = values && messageOf(saying, `told.what.${says.code}`, values);
  if (!what) return (findingSentence(saying, says) ?? wordOf(saying.intl, 'kind', kind)).replace(/\.$/, '');
  const name = saying.names.severalControllers ? saying.names.of(detailsOf(says).text('controllerId')) : null;
  return name === null
    ? what
    : saying.intl.formatMessage({ id: 'told.onController' }, { name, what: what.charAt(0).toLocaleLowerCase() + what.slice(1) });
}

/** What has ended has a last day; what goes on has none. */
function whenOf({ intl, formats }: Saying, { kind, fromOn, untilOn, state, clearedAt }: ToldFinding): string {
  if (!fromOn) return intl.formatMessage({ id: 'told.when.unknown' });
  const [from, until] = [formats.dayInWords(fromOn), formats.dayInWords(untilOn)];
  const hasEnded = Boolean(clearedAt) || state === 'resolved';
  // Plants stand there since the day on which they were written down.
  if (fromOn === untilOn && kind !== 'mixed water needs') return intl.formatMessage({ id: 'told.when.on' }, { from });
  return hasEnded && untilOn
    ? intl.formatMessage({ id: 'told.when.between' }, { from, until })
    : intl.formatMessage({ id: 'told.when.since' }, { from });
}

function sureOf({ intl, formats }: Saying, { kind, confidence }: ToldFinding): string {
  if (kind === 'seen on site') return intl.formatMessage({ id: 'told.sure.eyes' });
  if (typeof confidence !== 'number') return intl.formatMessage({ id: 'told.sure.unknown' });
  if (confidence === 1 && isFromRecords(kind)) return intl.formatMessage({ id: 'told.sure.records' });
  return intl.formatMessage({ id: 'told.sure.share' }, { share: formats.percent(Math.min(SUREST, confidence)) });
}
