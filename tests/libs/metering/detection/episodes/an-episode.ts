import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import fc from 'fast-check';

/** A day on which nothing special is: 2025-04-12. */
export const SOME_DAY = 20_190;

/** An episode of one meter; every number is invented. */
export function anEpisode(given: Partial<Episode> = {}): Episode {
  const opened = given.openedLocalDay ?? SOME_DAY;
  const kind = given.kind ?? 'unexplained use';
  return {
    kind,
    causeKey: `${kind} meter:m ${dateOfDayNumber(opened - 10)}`,
    causeFamily: 'excess meter:m',
    meterId: 'm',
    controllerId: null,
    zoneIds: [],
    fromDate: dateOfDayNumber(opened - 10),
    untilDate: dateOfDayNumber(opened),
    litres: 20_000,
    sdLitres: 100,
    money: null,
    confidence: 1,
    evidence: {},
    says: { code: kind, details: {} },
    openedLocalDay: opened,
    clearedLocalDay: null,
    ...given,
  };
}

const kinds = [
  'overwatered',
  'unexplained use',
  'steady flow',
  'off-schedule run',
  'zone flow changed',
  'not delivering',
  'over-programmed',
] as const;

/** Episodes of two meters over some years, of any of the kinds that one cause can take. */
export const someEpisodes: fc.Arbitrary<readonly Episode[]> = fc.array(
  fc
    .record({
      kind: fc.constantFrom(...kinds),
      meterId: fc.constantFrom('m', 'n'),
      day: fc.integer({ min: 0, max: 900 }),
      lasts: fc.option(fc.integer({ min: 1, max: 200 }), { nil: null }),
      litres: fc.integer({ min: 1000, max: 60_000 }),
      ratio: fc.constantFrom(0.5, 1.5),
    })
    .map(({ kind, meterId, day, lasts, litres, ratio }) =>
      anEpisode({
        kind,
        meterId,
        causeKey: `${kind} meter:${meterId} ${dateOfDayNumber(SOME_DAY + day - 10)}`,
        causeFamily: `excess meter:${meterId}`,
        litres,
        says: { code: kind, details: { ratio } },
        openedLocalDay: SOME_DAY + day,
        clearedLocalDay: lasts === null ? null : SOME_DAY + day + lasts,
      }),
    ),
  { maxLength: 10 },
);
