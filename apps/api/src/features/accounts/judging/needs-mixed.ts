import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { mixedNeeds, mixedNeedsFinding } from '@rillbook/metering/detection/settings/mixed-needs.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts, ZoneFact } from '../gather/property-facts.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';

const DAYS_OF_YEAR = 365;
/** Fewer days of weather do not make a year. */
const FEWEST_DAYS = 300;
const WHOLE_COVER = 100;

/** Zones in which a few thirsty plants cost more than a look is worth, known since a year of weather is there. */
export function needsMixed(
  facts: PropertyFacts,
  zones: readonly AccountZone[],
  weather: { readonly eto: EtoSeries; readonly today: number; readonly pricePerLitre: number | null },
  thresholds: Thresholds,
): Episode[] {
  const etoOfYear = yearOf(weather.eto, weather.today);
  if (etoOfYear === null) return [];
  // It does not begin on a day that is known: the record is as old as the weather that tells what it costs.
  const since = Math.max(weather.eto.firstDay + DAYS_OF_YEAR, weather.today - DAYS_OF_YEAR);
  return facts.zones.flatMap((fact) => {
    const zone = zones.find(({ id }) => id === fact.id);
    const plants = plantsOf(fact, zone);
    if (!zone || zone.handWatered || plants.length < 2) return [];
    const { areaM2, duLq, leachingFraction } = zone;
    const shared = { zoneId: zone.id, plants, areaM2, duLq, leachingFraction, etoOfYear };
    const mixed = mixedNeeds(shared);
    const candidate = mixed && mixedNeedsFinding(shared, mixed, weather.pricePerLitre, dateOfDayNumber(since));
    if (!candidate || !isWorth(candidate, thresholds)) return [];
    return [{ ...candidate, causeKey: `${candidate.causeKey} ${candidate.fromDate}`, openedLocalDay: since, clearedLocalDay: null }];
  });
}

function isWorth({ litres, money }: { litres: number | null; money: number | null }, { minLitres, minMoney }: Thresholds): boolean {
  return (litres ?? 0) >= minLitres && (money === null || money >= minMoney);
}

// Cover that nobody stated is shared evenly.
function plantsOf(fact: ZoneFact, zone: AccountZone | undefined) {
  const even = WHOLE_COVER / Math.max(1, fact.plantings.length);
  return fact.plantings.flatMap(({ waterNeed, coverPercent }) =>
    waterNeed === null || !zone
      ? []
      : [{ cover: coverPercent ?? even, plantFactor: plantFactor(null, waterNeed, fact.plants).plantFactor * zone.density * zone.shade }],
  );
}

function yearOf({ weather }: EtoSeries, today: number): number | null {
  let [sum, known] = [0, 0];
  for (let day = today - DAYS_OF_YEAR; day < today; day++) {
    const eto = weather.etoMm[day - weather.firstDay] ?? Number.NaN;
    if (Number.isNaN(eto)) continue;
    sum += eto;
    known += 1;
  }
  return known >= FEWEST_DAYS ? (sum * DAYS_OF_YEAR) / known : null;
}
