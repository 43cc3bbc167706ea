import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { DAYS_BEFORE_MONTH } from '../volumes/weather-series.js';
import type { AccountFacts } from './account-input.js';
import { type CoveredMonth, hasEto } from './needed/covered-month.js';
import type { MeteredOfMeter } from './metered-of-meter.js';
import type { AccountNote, Volumes } from './month-account.js';

type Estimated = Pick<Volumes['allowed'], 'estimatedShare'>;

/** What the notes ask of the property's volumes. */
export type EstimatedShares = Readonly<Record<'allowed' | 'needed' | 'programmed' | 'metered', Estimated>> & {
  readonly settingsGap: Pick<Volumes['settingsGap'], 'estimate'>;
};

/** What the notes are taken from. */
export interface NotedAccount {
  readonly input: AccountFacts;
  readonly month: CoveredMonth;
  readonly property: EstimatedShares;
  readonly meters: readonly (readonly [string, MeteredOfMeter])[];
}

/**
 * What the reader of an account should know: where weather starts, what is assumed or estimated, which sources contradict each other.
 *
 * @param account - The input, the covered days and what was computed from them. [code]
 * @returns Notes as codes and details, weather first. [code]
 */
export function accountNotes(account: NotedAccount): readonly AccountNote[] {
  return [...notesBesideZones(account), ...notesOfZones(account.input.zones)];
}

/**
 * The notes that are not about a single zone.
 *
 * @param account - The input, the covered days and what was computed from them. [code]
 * @returns Notes as codes and details, weather first. [code]
 */
export function notesBesideZones(account: NotedAccount): readonly AccountNote[] {
  return [
    ...weatherNotes(account.month),
    ...filledNotes(account.month),
    ...rainNotes(account.month),
    ...areaNotes(account.input),
    ...estimatedNotes(account.property),
    ...contradictionNotes(account),
  ];
}

/**
 * The notes on single zones: whose plants are young, and which inputs are assumed.
 *
 * @param zones - The zones. [code]
 * @returns Notes as codes and details. [code]
 */
export function notesOfZones(
  zones: readonly { readonly id: string; readonly assumed: readonly string[]; readonly establishedShare?: number | null }[],
): readonly AccountNote[] {
  const establishing = zones.flatMap(({ id, establishedShare: share }) =>
    share === undefined || share === null ? [] : [{ code: 'plants-establishing' as const, details: { zoneId: id, share } }],
  );
  const assumed = zones.flatMap(({ id, assumed: inputs }) =>
    inputs.map((input) => ({ code: 'input-assumed' as const, details: { zoneId: id, input } })),
  );
  return [...establishing, ...assumed];
}

function weatherNotes({ weather, weatherFrom, firstDay, days }: CoveredMonth): readonly AccountNote[] {
  // Where the month itself has no weather, its volumes say so.
  if (!hasEto(weather, firstDay, firstDay + days)) return [];
  const before = firstDay - weatherFrom;
  const at = weatherFrom - weather.firstDay;
  let missing = 0;
  for (let day = at; day < at + before; day += 1)
    if (Number.isNaN((weather.etoMm[day] ?? Number.NaN) + (weather.rainMm[day] ?? Number.NaN))) missing += 1;
  const notes: AccountNote[] = [];
  if (before < DAYS_BEFORE_MONTH) {
    notes.push({
      code: 'weather-starts-later',
      details: { from: dateOfDayNumber(weatherFrom), daysBefore: before, daysWanted: DAYS_BEFORE_MONTH },
    });
  }
  if (missing > 0) notes.push({ code: 'weather-missing-before-month', details: { days: missing } });
  return notes;
}

// Only days that are part of what was needed as they stand: one whose rain is not known is filled by the account itself.
function filledNotes({ weather, firstDay, missing }: CoveredMonth): readonly AccountNote[] {
  const filled = missing.filledDays.map((day) => weather.filledDays?.get(firstDay + day - weather.firstDay));
  const [neighbourDays, normalDays] = (['neighbour', 'normals'] as const).map((from) => filled.filter((one) => one === from).length);
  if (!neighbourDays && !normalDays) return [];
  return [{ code: 'weather-filled', details: { neighbourDays: neighbourDays ?? 0, normalDays: normalDays ?? 0 } }];
}

function rainNotes({ weather, firstDay, days: covered, missing }: CoveredMonth): readonly AccountNote[] {
  const at = firstDay - weather.firstDay;
  let told = 0;
  for (let day = at; day < at + covered; day += 1) if (weather.neighbourRain?.has(day)) told += 1;
  const { daysWithoutRain: unknown } = missing;
  const notes: AccountNote[] = [];
  if (told > 0) notes.push({ code: 'weather-rain-from-neighbour', details: { days: told } });
  if (unknown > 0) notes.push({ code: 'weather-rain-not-known', details: { days: unknown } });
  return notes;
}

function areaNotes({ allowance, zones }: AccountFacts): readonly AccountNote[] {
  if (allowance?.from !== 'ordinance') return [];
  const irrigatedAreaM2 = zones.filter((zone) => !zone.handWatered && zone.meterId !== 'none').reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const { specialLandscapeAreaM2 } = allowance;
  if (specialLandscapeAreaM2 <= irrigatedAreaM2) return [];
  return [{ code: 'special-landscape-area-capped', details: { specialLandscapeAreaM2, irrigatedAreaM2 } }];
}

function estimatedNotes(property: EstimatedShares): readonly AccountNote[] {
  const volumes = ['allowed', 'needed', 'programmed', 'metered'] as const;
  return volumes
    .filter((volume) => property[volume].estimatedShare > 0)
    .map((volume) => {
      const share = property[volume].estimatedShare;
      const { estimate } = property.settingsGap;
      if (volume !== 'programmed' || estimate === null) return { code: 'volume-estimated', details: { volume, share } };
      return { code: 'programmed-from-weather', details: { share, controllerId: String(estimate.details['controllerId'] ?? '') } };
    });
}

function contradictionNotes({ meters }: NotedAccount): readonly AccountNote[] {
  return meters.flatMap(([meterId, { contradictions }]) =>
    contradictions.map((each) => ({
      code: 'sources-contradict' as const,
      details: {
        meterId,
        from: dateOfDayNumber(each.fromLocalDay),
        until: dateOfDayNumber(Math.ceil(each.toLocalDay) - 1),
        source: each.source,
        litres: each.litres,
        betterSource: each.betterSource,
        betterLitres: each.betterLitres,
      },
    })),
  );
}
