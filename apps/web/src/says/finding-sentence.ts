import type { FindingKind } from '@rillbook/metering/detection/finding-candidate.js';
import type { ReadingJudgement } from '@rillbook/metering/intervals/judge-reading.js';
import { type Details, detailsOf, type Reason } from './reason.js';
import { aboutVolume, messageOf, type Saying, wordOf } from './saying.js';
import { sourceValues } from './source-values.js';
import { type DryCode, usageValues } from './usage-values.js';
import { zoneValues } from './zone-values.js';

/** Every code that a finding says: its kind, for a doubtful reading the judgement on it, for what hours show what does not deliver. */
export type FindingCode =
  | Exclude<FindingKind, 'doubtful reading'>
  | DryCode
  | Exclude<ReadingJudgement, 'ok' | 'rollover'>
  | 'sources-contradict';

type Values = Record<string, string | number>;

const NONE = 'none';
const REGISTER_DECIMALS = 3;
const none = <Value>(value: Value | null, write: (value: Value) => string): string => (value === null ? NONE : write(value));

/** The values that each code's message is given. The record is complete: a new code of the library does not compile without its words. */
export const findingValues: Readonly<Record<FindingCode, (saying: Saying, details: Details) => Values>> = {
  overwatered: (saying, details) => ({
    ...extraOf(saying, details, 'neededLitres'),
    ...beforeOf(saying, details),
    because: none(details.text('because'), (code) => messageOf(saying, `says.reason.${code}`, emptyReason) ?? NONE),
  }),
  'over-programmed': programmed,
  'under-programmed': programmed,
  'unexplained use': (saying, details) => ({
    ...extraOf(saying, details, 'programmedLitres'),
    ...ratios(saying, details),
    ...beforeOf(saying, details),
  }),
  'not delivering': (saying, details) => ({ ...ratios(saying, details), ratio: saying.formats.percent(details.number('ratio')) }),
  'flow to be tested': ({ formats }, details) => ({ usual: formats.percent(details.number('usualRatio')) }),
  'over allowance': (saying, details) => ({
    extra: aboutVolume(saying.formats, difference(details, 'meteredLitres', 'allowedLitres')),
    running: details.number('daysCovered') === details.number('daysInMonth') ? 'no' : 'yes',
    daysCovered: details.number('daysCovered') ?? 0,
    daysInMonth: details.number('daysInMonth') ?? 0,
    projected: aboutVolume(saying.formats, details.number('projectedLitres')),
    ...bandOf(saying, details),
  }),
  'lower than last': registers,
  'implausibly high': registers,
  stuck: registers,
  'unit mixed up': registers,
  'digits swapped': (saying, details) => ({
    ...registers(saying, details),
    likely: saying.formats.number(details.number('likelyRegister'), REGISTER_DECIMALS),
  }),
  'digit mistyped': (saying, details) => ({
    ...registers(saying, details),
    likely: saying.formats.number(details.number('likelyRegister'), REGISTER_DECIMALS),
  }),
  'sources-contradict': sourceValues,
  stale: (saying, details) => ({ what: staleThings(saying, details) }),
  ...usageValues,
};

// By days alone there is no band; what may keep within the allowance has no lower end worth telling.
function bandOf({ formats }: Saying, details: Details): Values {
  const [middle, lower, upper] = (['projectedLitres', 'projectedLowerLitres', 'projectedUpperLitres'] as const).map(details.number);
  if (lower == null || upper == null) return { band: 'no' };
  const band = (middle ?? 0) <= 0 ? 'within' : lower <= 0 ? 'upTo' : 'both';
  return { band, lower: aboutVolume(formats, lower), upper: aboutVolume(formats, upper) };
}

/** What a finding says, as one or two sentences in the reader's language and units; null for a code without words. */
export function findingSentence(saying: Saying, says: Reason): string | null {
  const details = detailsOf(says);
  if (!Object.hasOwn(findingValues, says.code)) return null;
  const said = messageOf(saying, `says.finding.${says.code}`, findingValues[says.code as FindingCode](saying, details));
  // It may begin with a zone that nobody could name: 'one zone'.
  const sentence = said && raised(said);
  const controller = saying.names.severalControllers ? saying.names.of(details.text('controllerId')) : null;
  return sentence && controller
    ? saying.intl.formatMessage({ id: 'says.controller' }, { name: controller, sentence: lowered(sentence) })
    : sentence;
}

/** A sentence with a capital letter at its begin. */
export const raised = (sentence: string): string => sentence.charAt(0).toLocaleUpperCase() + sentence.slice(1);
const lowered = (sentence: string): string => sentence.charAt(0).toLocaleLowerCase() + sentence.slice(1);

/** The sentence for a code that this version does not know: the kind is all that can be told. */
export const otherFinding = (saying: Saying, kind: string): string =>
  messageOf(saying, 'says.finding.other', { kind: wordOf(saying.intl, 'kind', kind) }) ?? kind;

/** A reason inside another sentence has no details of its own. */
const emptyReason: Values = { zones: 0, zoneName: '', controller: NONE, meters: NONE, share: NONE, days: 0, of: NONE, volumes: '' };

/** By the month at its rate, as the finding's own water is; without one, what passed between two readings. */
function extraOf({ formats }: Saying, details: Details, less: string): Values {
  const perMonth = details.number('litresPerMonth');
  return { extra: aboutVolume(formats, perMonth ?? difference(details, 'meteredLitres', less)), per: perMonth === null ? NONE : 'month' };
}

/** What it was a month before it grew and opened anew. */
function beforeOf({ formats }: Saying, details: Details): Values {
  return { before: none(details.number('outgrownLitresPerMonth'), (litres) => aboutVolume(formats, litres)) };
}

function difference(details: Details, more: string, less: string): number | null {
  const [high, low] = [details.number(more), details.number(less)];
  return high === null || low === null ? null : high - low;
}

function programmed(saying: Saying, details: Details): Values {
  const programs = details.texts('programs');
  const percent = details.number('percentOfNow');
  return {
    programs: programs.length,
    programNames: saying.intl.formatList(programs, { type: 'conjunction' }),
    ...zoneValues(saying, details.texts('zoneIds')),
    percent: none(percent, (value) => saying.formats.percent(value / 100)),
  };
}

function ratios({ formats }: Saying, details: Details): Values {
  return { ratio: none(details.number('ratio'), formats.percent), usual: none(details.number('usualRatio'), formats.percent) };
}

function registers({ formats }: Saying, details: Details): Values {
  const register = (value: number | null): string => formats.number(value, REGISTER_DECIMALS);
  return {
    next: register(details.number('nextRegister')),
    previous: register(details.number('previousRegister')),
    likely: none(details.number('likelyRegister'), register),
    factor: none(details.number('factor'), (value) => formats.number(value, 3)),
  };
}

function staleThings(saying: Saying, details: Details): string {
  const { intl } = saying;
  const meters = details.texts('meterIds').length;
  const controllers = details.texts('controllerIds').length;
  const days = details.number('daysSinceVisit');
  const things = [
    meters > 0 ? intl.formatMessage({ id: 'says.stale.meters' }, { count: meters }) : null,
    controllers > 0 ? intl.formatMessage({ id: 'says.stale.controllers' }, { count: controllers }) : null,
    days === null ? null : intl.formatMessage({ id: 'says.stale.visit' }, { days }),
  ];
  return intl.formatList(
    things.filter((thing) => thing !== null),
    { type: 'conjunction' },
  );
}
