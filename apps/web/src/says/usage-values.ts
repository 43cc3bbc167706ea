import { clockInWords } from '../programs/days-in-words.js';
import type { Details } from './reason.js';
import { aboutVolume, type Saying, wordOf } from './saying.js';
import { zoneName, zoneValues } from './zone-values.js';

/** The codes of what hourly usage, rules, plantings and a crew's eyes show. */
type UsageCode =
  | 'steady flow'
  | 'off-schedule run'
  | 'watered in rain'
  | 'zone flow changed'
  | 'breaks a rule'
  | 'mixed water needs'
  | 'seen on site';

/** What does not deliver, where the hours tell: one zone, all zones a part of their water, or no run any. */
export type DryCode = 'not delivering zone' | 'not delivering pressure' | 'not delivering runs';

type Values = Record<string, string | number>;

const oneZone = (saying: Saying, details: Details): Values => zoneValues(saying, [details.text('zoneId') ?? ''].filter(Boolean));

/** Zones that usage does not tell apart are named together: it is one of them. */
const oneOfZones = (saying: Saying, details: Details): Values => {
  const likely = details.texts('zoneIds');
  if (likely.length < 2) return oneZone(saying, details);
  const names = likely.map((zoneId) => zoneName(saying, zoneId));
  return { zones: 1, zoneName: saying.intl.formatList(names, { type: 'disjunction' }) };
};

const clockOf = (formats: Saying['formats'], clock: string | null): string => (clock ? clockInWords(formats, clock) : 'none');

/** The values of their messages, by code. */
export const usageValues: Readonly<Record<UsageCode | DryCode, (saying: Saying, details: Details) => Values>> = {
  'steady flow': ({ formats }, details) => ({
    flow: formats.quantity('flow', details.number('litresPerMinute')),
    soFar: aboutVolume(formats, details.number('litresSoFar')),
  }),
  'off-schedule run': ({ formats }, details) => ({
    times: details.number('times') ?? 0,
    each: aboutVolume(formats, details.number('litresEach')),
    clock: clockOf(formats, details.text('clockTime')),
  }),
  'watered in rain': ({ formats }, details) => ({
    rain: formats.quantity('depth', details.number('rainMm')),
    days: details.number('days') ?? 0,
  }),
  'zone flow changed': (saying, details) => ({
    ...oneOfZones(saying, details),
    flow: saying.formats.quantity('flow', details.number('litresPerMinute')),
    usual: saying.formats.quantity('flow', details.number('usualLitresPerMinute')),
    change: (details.number('ratio') ?? 1) > 1 ? 'more' : 'less',
  }),
  'not delivering zone': oneOfZones,
  'not delivering pressure': ({ formats }, details) => ({ ratio: formats.percent(details.number('ratio')) }),
  'not delivering runs': (_, details) => ({ days: details.number('runDays') ?? 0 }),
  'breaks a rule': ({ intl }, details) => ({
    rule: details.text('rule') ?? 'none',
    programs: details.texts('programs').length,
    programNames: intl.formatList(details.texts('programs'), { type: 'conjunction' }),
  }),
  'mixed water needs': (saying, details) => ({
    ...oneZone(saying, details),
    aYear: aboutVolume(saying.formats, details.number('litresPerYear')),
  }),
  'seen on site': (saying, details) => ({
    where: details.text('zoneId') === null ? 'none' : zoneName(saying, details.text('zoneId')),
    what: wordOf(saying.intl, 'seen', details.text('what') ?? 'other'),
    count: details.number('count') ?? 1,
    word: details.text('word') ?? 'none',
  }),
};
