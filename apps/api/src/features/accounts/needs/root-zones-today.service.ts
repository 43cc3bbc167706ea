import { irrigationNeed, WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { type DaysAhead, daysUntilNeed } from '@rillbook/agronomy/water-balance/root-zone/days-until-need.js';
import type { StationDay } from '@rillbook/agronomy/station-days/station-day.js';
import type { MonthlyNormal } from '@rillbook/agronomy/weather/filling/monthly-normals.js';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { RECENT_DAYS } from '../../weather/days/recent-rain.type.js';
import { stationSeriesOf } from '../../weather/series/station-series.loader.js';
import type { ZoneFact } from '../gather/property-facts.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { stagesOfZones } from '../gather/year-of-zones.js';

/** Days looked ahead; further nobody plans a pause. */
const DAYS_AHEAD = 15;
/** Where a month's normal is not known, the evapotranspiration of so many days up to now is taken as usual: an assumption. */
const LATELY = 30;

/** A day on which it rained. */
export interface RainOfDay {
  readonly date: string;
  readonly mm: number;
}

/** The weather of a station up to today, and the usual one after it. */
export interface WeatherToday {
  readonly stationName: string;
  /** days on which it rained of the last few, today's included where it is on record, oldest first */
  readonly rain: readonly RainOfDay[];
  /** the newest day on record, at the latest today */
  readonly through: string;
  readonly before: DaysAhead;
  readonly ahead: DaysAhead;
}

/** A zone's root zone today. */
export interface RootZoneToday {
  readonly zone: AccountZone;
  /** whole days from today on that need no irrigation [d] */
  readonly days: number;
  /** its soil and plants are on record, and its plants are grown */
  readonly isKnown: boolean;
  readonly plants: ZoneFact['plants'];
  readonly method: ZoneFact['method'];
}

/** The weather of a station up to today; null where nothing recent is on record, or what is usual there is not known. */
export async function weatherToday(tx: OrganizationTransaction, stationId: string, today: string): Promise<WeatherToday | null> {
  const series = await stationSeriesOf.of(tx).load(stationId);
  const day = dayNumberOfDate(today);
  const first = series?.days[0];
  if (!series || !first) return null;
  const firstDay = dayNumberOfDate(first.date);
  const at = (dayNumber: number) => series.days[dayNumber - firstDay];
  const recent = Array.from({ length: RECENT_DAYS }, (_, back) => day - RECENT_DAYS + 1 + back);
  const known = recent.filter((each) => (at(each)?.rainMm ?? null) !== null);
  if (!known.length) return null;
  const usual = usualEto(series.normals, series.days.slice(-LATELY));
  const etoOf = (dayNumber: number): number | null => at(dayNumber)?.eto.etoMm ?? usual(dayNumber);
  // Rain that nobody has measured is not counted on: the root zone is taken as drier than it may be.
  const rainOf = (dayNumber: number): number => at(dayNumber)?.rainMm ?? 0;
  const before = span(day - WARM_UP_DAYS, WARM_UP_DAYS, etoOf, rainOf);
  const ahead = span(day, DAYS_AHEAD, etoOf, (dayNumber) => (dayNumber === day ? rainOf(day) : 0));
  if (!before || !ahead) return null;
  return {
    stationName: series.station.name,
    rain: known.map((each) => ({ date: dateOfDayNumber(each), mm: rainOf(each) })).filter(({ mm }) => mm > 0),
    through: dateOfDayNumber(known.at(-1)!),
    ...{ before, ahead },
  };
}

/** The month's normal; where its days on record are too few, what the last weeks had. */
function usualEto(normals: readonly MonthlyNormal[], lately: readonly StationDay[]): (dayNumber: number) => number | null {
  const known = lately.flatMap(({ eto }) => eto.etoMm ?? []);
  const mean = known.length ? known.reduce<number>((sum, mm) => sum + mm, 0) / known.length : null;
  return (dayNumber) => normals[Number(dateOfDayNumber(dayNumber).slice(5, 7)) - 1]?.etoMm ?? mean;
}

function span(
  from: number,
  days: number,
  etoOf: (dayNumber: number) => number | null,
  rainOf: (dayNumber: number) => number,
): DaysAhead | null {
  const numbers = Array.from({ length: days }, (_, index) => from + index);
  const eto = numbers.map(etoOf);
  return eto.every((mm) => mm !== null) ? { eto, rain: numbers.map(rainOf) } : null;
}

/**
 * What the root zones of some properties still hold today, in two statements: their depletion with the weather that came, irrigated in between
 * as far as they needed it, and how long it lasts under the station's usual evapotranspiration without rain.
 */
export async function rootZonesToday(
  tx: OrganizationTransaction,
  weatherOf: ReadonlyMap<string, WeatherToday>,
  today: string,
): Promise<Map<string, RootZoneToday[]>> {
  const { zones, meters } = await propertyFacts.zonesAndMetersOf(tx, [...weatherOf.keys()]);
  const daysOf = rememberedDays();
  const found = new Map<string, RootZoneToday[]>();
  for (const [propertyId, weather] of weatherOf) {
    const facts = new Map((zones.get(propertyId) ?? []).map((fact) => [fact.id, fact]));
    const [stage] = stagesOfZones({ zones: [...facts.values()], meters: meters.get(propertyId) ?? [] }, [today.slice(0, 7)]);
    const own = (stage?.zones ?? []).map((zone) => {
      const { plants, method, soil } = facts.get(zone.id)!;
      const isKnown = soil !== null && plants !== null && zone.establishedShare === undefined;
      return { zone, days: daysOf(weather, zone), isKnown, plants, method };
    });
    found.set(propertyId, own);
  }
  return found;
}

/** Zones alike under one station's weather are reckoned once. */
function rememberedDays(): (weather: WeatherToday, zone: AccountZone) => number {
  const known = new Map<WeatherToday, Map<string, number>>();
  return (weather, { plantFactor, density, shade, rawMm }) => {
    const ofStation = known.get(weather) ?? new Map<string, number>();
    known.set(weather, ofStation);
    const root = { plantCoefficient: plantFactor * density * shade, readilyAvailableWater: rawMm as Quantity<'mm'> };
    const key = `${root.plantCoefficient} ${rawMm}`;
    const present = ofStation.get(key);
    if (present !== undefined) return present;
    const { finalDepletionMm } = irrigationNeed(weather.before, root, WARM_UP_DAYS);
    const days = daysUntilNeed({ ...root, depletion: finalDepletionMm }, weather.ahead);
    ofStation.set(key, days);
    return days;
  };
}
