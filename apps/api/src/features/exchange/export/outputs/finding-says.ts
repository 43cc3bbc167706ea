import { gallonsFromLitres, litres } from '@rillbook/units/volume.js';
import type { FindingAnswer } from './findings.repository.js';

type Details = Readonly<Record<string, unknown>>;
type Finding = Pick<FindingAnswer, 'kind' | 'controller' | 'zones' | 'says'>;

/** Volumes are told to three figures: what is finer was never measured. */
const FIGURES = 3;

const numberOf = (details: Details, key: string): number | null => {
  const value = details[key];
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
};
const textOf = (details: Details, key: string): string => (typeof details[key] === 'string' ? String(details[key]) : '?');
const textsOf = (details: Details, key: string): readonly string[] => (Array.isArray(details[key]) ? details[key].map(String) : []);

const percent = (share: number | null): string => (share === null ? '?' : `${Math.round(100 * share)} percent`);
const register = (details: Details, key: string): string => String(numberOf(details, key) ?? '?');
const gallons = (value: number | null): string =>
  value === null ? 'an unknown volume' : `${Number(gallonsFromLitres(litres(value)).toPrecision(FIGURES)).toFixed(0)} gal`;
const more = (details: Details, high: string, low: string): string => {
  const [above, below] = [numberOf(details, high), numberOf(details, low)];
  return gallons(above === null || below === null ? null : above - below);
};
const likely = (details: Details): string =>
  numberOf(details, 'likelyRegister') === null ? '' : ` ${register(details, 'likelyRegister')} was probably meant.`;
const usual = (details: Details): string => {
  const ratio = numberOf(details, 'usualRatio');
  return ratio === null ? '' : `, ${percent(ratio)} in earlier months`;
};

// Below zero is within the allowance.
function bandOf(details: Details): string {
  const [lower, upper] = [details['projectedLowerLitres'], details['projectedUpperLitres']];
  if (typeof lower !== 'number' || typeof upper !== 'number') return ' at this pace';
  return `, nine times in ten between ${gallons(lower)} and ${gallons(upper)}`;
}

/** What each code of the library says, in English and US gallons. */
const SENTENCES: Readonly<Record<string, (details: Details, finding: Finding) => string>> = {
  overwatered: (details) =>
    `${more(details, 'meteredLitres', 'neededLitres')} more went through the meter than the plants needed${grownFrom(details)}. Settings not known: read the controller.`,
  'over-programmed': (details, finding) => `${programsGive(details, finding)} more than the plants need.${minutesOfNow(details)}`,
  'under-programmed': (details, finding) => `${programsGive(details, finding)} less than the plants need.${minutesOfNow(details)}`,
  'unexplained use': unexplained,
  'not delivering': (details) =>
    `Only ${percent(numberOf(details, 'ratio'))} of what was programmed went through the meter${usual(details)}: a valve may not open, or the controller is off.`,
  'not delivering zone': (_, { zones }) =>
    `${zones?.join(' or ') || 'A zone'} passes hardly any water when set to run: look at the valve and its wiring first.`,
  'not delivering pressure': (details) =>
    `All zones together pass only ${percent(numberOf(details, 'ratio'))} of their usual flow: look at the pressure, a main valve or a filter first.`,
  'not delivering runs': (details) =>
    `Nothing went through the meter on ${numberOf(details, 'runDays') ?? 'some'} days on which programs were set to run and no rain explains it: look at the controller and the master valve first.`,
  'flow to be tested': (details) =>
    `Metered is always about ${percent(numberOf(details, 'usualRatio'))} of programmed: the recorded flows of the zones are probably wrong. Test them before believing either.`,
  'over allowance': (details) =>
    `${more(details, 'meteredLitres', 'allowedLitres')} more metered than is allowed, in ${numberOf(details, 'daysCovered')} of ${numberOf(details, 'daysInMonth')} days; ${gallons(numberOf(details, 'projectedLitres'))} by the month's end${bandOf(details)}.`,
  'lower than last': (details) =>
    `Register ${register(details, 'nextRegister')} is lower than the one before, ${register(details, 'previousRegister')}, and no rollover or swap explains it.${likely(details)}`,
  'implausibly high': (details) =>
    `Register ${register(details, 'nextRegister')} after ${register(details, 'previousRegister')} is more water than can have run.`,
  stuck: (details) => `The register still stands at ${register(details, 'nextRegister')}, though water must have run.`,
  'unit mixed up': (details) =>
    `Register ${register(details, 'nextRegister')} after ${register(details, 'previousRegister')} looks like another unit.${likely(details)}`,
  'digits swapped': (details) =>
    `Register ${register(details, 'nextRegister')} after ${register(details, 'previousRegister')} has probably two digits swapped.${likely(details)}`,
  'digit mistyped': (details) =>
    `Register ${register(details, 'nextRegister')} after ${register(details, 'previousRegister')} has probably one wrong digit.${likely(details)}`,
  'sources-contradict': (details) =>
    `From ${textOf(details, 'from')} to ${textOf(details, 'until')} ${textOf(details, 'source')} says ${gallons(numberOf(details, 'litres'))}, but ${textOf(details, 'betterSource')} says ${gallons(numberOf(details, 'betterLitres'))}. The account takes ${textOf(details, 'betterSource')}.`,
  'steady flow': (details) =>
    `Water flows through the meter without a stop, ${gallons(numberOf(details, 'litresSoFar'))} so far. Look for a leak, a broken pipe or a valve that does not close.`,
  'off-schedule run': (details) =>
    `Water ran ${numberOf(details, 'times') ?? 'some'} times outside every program, ${gallons(numberOf(details, 'litresEach'))} each time.`,
  'watered in rain': (details) =>
    `The settings ran on ${numberOf(details, 'days') ?? 'some'} days on which rain already covered what the plants needed.`,
  'zone flow changed': (details, { zones }) =>
    `${zones?.join(' or ') || 'A zone'} passes ${(numberOf(details, 'ratio') ?? 1) > 1 ? 'more' : 'less'} water than usual, ${percent(numberOf(details, 'ratio'))} of it.`,
  'breaks a rule': (details, finding) => `${programsBreak(details, finding)} ${textOf(details, 'rule')}.`,
  'mixed water needs': (details, { zones }) =>
    `Plants with different needs share ${zones?.join('; ') || 'a zone'}: watering for the thirstiest costs ${gallons(numberOf(details, 'litresPerYear'))} a year.`,
  'seen on site': (details, { zones }) =>
    `Seen on site${zones?.length ? ` in ${zones.join('; ')}` : ''}: ${textOf(details, 'what')}, ${numberOf(details, 'count') ?? 1} of them.`,
  stale: (details) => `Not heard of for long: ${staleThings(details)}.`,
};

/** What a finding says, as one or two sentences; a code without words says its kind. */
export function findingSays(finding: Finding): string {
  const sentence = SENTENCES[finding.says.code]?.(finding.says.details, finding) ?? `${finding.kind}.`;
  return finding.controller === null ? sentence : `${finding.controller}: ${sentence}`;
}

function grownFrom(details: Details): string {
  const before = numberOf(details, 'outgrownLitresPerMonth');
  return before === null ? '' : `, up from ${gallons(before)} a month`;
}

// What the hours show is told by the month at its rate, what readings show by what passed between them.
function unexplained(details: Details): string {
  const ratio = numberOf(details, 'ratio');
  const grown = grownFrom(details);
  if (ratio === null) return `${gallons(numberOf(details, 'litresPerMonth'))} a month that no program explains${grown}.`;
  return `${more(details, 'meteredLitres', 'programmedLitres')} that no program explains${grown}: metered is ${percent(ratio)} of programmed${usual(details)}.`;
}

function programsGive(details: Details, { zones }: Finding): string {
  const programs = textsOf(details, 'programs');
  const givers =
    programs.length === 0
      ? 'The settings give'
      : `Program${programs.length > 1 ? 's' : ''} ${programs.join(', ')} give${programs.length > 1 ? '' : 's'}`;
  return `${givers} ${zones?.length ? zones.join('; ') : 'the plants'}`;
}

function programsBreak(details: Details, { zones }: Finding): string {
  const programs = textsOf(details, 'programs');
  const where = zones?.length ? ` at ${zones.join('; ')}` : '';
  return programs.length ? `Programs ${programs.join(', ')}${where} break the rule` : `The settings${where} break the rule`;
}

function minutesOfNow(details: Details): string {
  const share = numberOf(details, 'percentOfNow');
  return share === null ? ' Nothing runs there now.' : ` About ${share} percent of the present minutes would be right.`;
}

function staleThings(details: Details): string {
  const [meters, controllers] = [textsOf(details, 'meterIds').length, textsOf(details, 'controllerIds').length];
  const days = numberOf(details, 'daysSinceVisit');
  const things = [
    meters > 0 ? `${meters === 1 ? 'a meter' : `${meters} meters`} without reading` : null,
    controllers > 0 ? `${controllers === 1 ? 'a controller' : `${controllers} controllers`} without settings` : null,
    days === null ? null : `no visit for ${days} days`,
  ];
  return things.filter((thing) => thing !== null).join(', ');
}
