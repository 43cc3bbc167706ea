import type { AbsenceCode } from '@rillbook/metering/volumes/absence.js';
import { type Details, detailsOf, type Reason } from './reason.js';
import { messageOf, type Saying } from './saying.js';
import { zoneValues } from './zone-values.js';

/** Every code that says why a number is not known, or why a row stands where it stands. */
export type ReasonCode = AbsenceCode | 'no-account' | 'within-what-can-be-measured';

type Values = Record<string, string | number>;

const nothing = (): Values => ({});
const zones = (saying: Saying, details: Details): Values => zoneValues(saying, details.texts('zones'));

/** The values that each code's message is given. The record is complete: a new code of the library does not compile without its words. */
export const reasonValues: Readonly<Record<ReasonCode, (saying: Saying, details: Details) => Values>> = {
  'no-complete-day': nothing,
  'no-zones': nothing,
  'no-meter': nothing,
  'no-allowance': nothing,
  'allowance-is-for-the-property': nothing,
  'indoor-not-known': nothing,
  'settings-from-weather': nothing,
  'no-account': nothing,
  'within-what-can-be-measured': nothing,
  'flow-not-known': zones,
  'no-controller': zones,
  'hand-volume-not-known': zones,
  'zones-not-assigned': zones,
  'weather-missing': (saying, details) => ({
    days: details.number('missingDays') ?? 0,
    of: details.number('missingDays') === null ? 'none' : (details.number('days') ?? 'none'),
    share: saying.formats.percent(details.number('missingShare')),
  }),
  'readings-missing': (saying, details) => ({
    share: details.number('missingShare') === null ? 'none' : saying.formats.percent(details.number('missingShare')),
    meters: meters(saying, details),
  }),
  'settings-not-known': ({ names }, details) => ({ controller: names.of(details.text('controllerId')) ?? 'none' }),
  'meter-without-zones': (saying, details) => ({ meters: meters(saying, details) }),
  'volume-absent': ({ intl }, details) => ({
    volumes: intl.formatList(
      details.texts('volumes').map((volume) => messageOf({ intl }, `gauge.${volume}`) ?? volume),
      { type: 'conjunction' },
    ),
  }),
};

/** Why a number is not known, as a sentence; null for a code without words. */
export function reasonSentence(saying: Saying, reason: Reason): string | null {
  if (!Object.hasOwn(reasonValues, reason.code)) return null;
  const sentence = messageOf(saying, `says.reason.${reason.code}`, reasonValues[reason.code as ReasonCode](saying, detailsOf(reason)));
  return sentence && sentence.charAt(0).toLocaleUpperCase() + sentence.slice(1);
}

/** The sentence for a code that this version does not know. */
export const otherReason = (saying: Saying, code: string): string => messageOf(saying, 'says.reason.other', { code }) ?? code;

function meters({ intl, names }: Saying, details: Details): string {
  const known = details.texts('meters').flatMap((id) => names.of(id) ?? []);
  return known.length === 0 ? 'none' : intl.formatList(known, { type: 'conjunction' });
}
