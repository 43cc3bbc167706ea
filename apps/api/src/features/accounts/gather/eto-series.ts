import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { AccountDay } from '@rillbook/metering/volumes/weather-series.js';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

interface KeptDay {
  readonly date: string;
  readonly latitude: number;
  readonly elevationM: number | null;
  readonly tmax: number | null;
  readonly tmin: number | null;
  readonly rhmax: number | null;
  readonly rhmin: number | null;
  readonly dewPoint: number | null;
  readonly wind: number | null;
  readonly windHeight: number | null;
  readonly solar: number | null;
  readonly rain: number | null;
  readonly givenEto: number | null;
}

const SQL = `select d.day::text as date, s.latitude, s.elevation_m as "elevationM", d.tmax_c as tmax, d.tmin_c as tmin, d.rh_max_percent as rhmax, d.rh_min_percent as rhmin, d.dew_point_c as "dewPoint", d.wind_m_per_s as wind, d.wind_height_m as "windHeight", d.solar_mj_per_m2 as solar, d.rain_mm as rain, d.given_eto_mm as "givenEto" from weather_day d join weather_station s on s.organization_id = d.organization_id and s.id = d.station_id where d.organization_id = $1 and d.station_id = $2 order by d.day`;

/** The days of one station with their reference ET, without holes: a day that was not measured is there with nulls. */
export class EtoSeries {
  private constructor(
    readonly firstDay: number,
    readonly days: readonly AccountDay[],
  ) {}

  static readonly none = new EtoSeries(0, []);

  /** Reads a station's days and computes the reference ET of each. */
  static async of(tx: OrganizationTransaction, stationId: string): Promise<EtoSeries> {
    const rows = await tx.query<KeptDay>(SQL, [tx.organizationId, stationId]);
    if (!rows.length) return EtoSeries.none;
    const first = dayNumberOfDate(rows[0]!.date);
    const last = dayNumberOfDate(rows.at(-1)!.date);
    const byDate = new Map(rows.map((row) => [row.date, row]));
    const days = Array.from({ length: last - first + 1 }, (_, index) => accountDay(dateOfDayNumber(first + index), byDate));
    return new EtoSeries(first, days);
  }

  /** The last day number that has a reference ET, or null. */
  get lastKnownDay(): number | null {
    const index = this.days.findLastIndex((day) => day.etoMm !== null);
    return index < 0 ? null : this.firstDay + index;
  }

  /** The days from one number to another, both included; days outside the series are not there. */
  between(from: number, until: number): readonly AccountDay[] {
    return this.days.slice(Math.max(0, from - this.firstDay), Math.max(0, until - this.firstDay + 1));
  }

  /** Reference ET of a span of day numbers, which may begin and end within a day; null when a day of it is not known. [mm] */
  etoOf(from: number, until: number): number | null {
    let sum = 0;
    for (let day = Math.floor(from); day < until; day++) {
      const eto = this.days[day - this.firstDay]?.etoMm ?? null;
      if (eto === null) return null;
      sum += eto * (Math.min(until, day + 1) - Math.max(from, day));
    }
    return sum;
  }
}

function accountDay(date: string, rows: ReadonlyMap<string, KeptDay>): AccountDay {
  const row = rows.get(date);
  if (!row) return { date, etoMm: null, rainMm: null, etoRelativeSd: 0 };
  const known = <Unit extends string>(value: number | null) => value as Quantity<Unit> | null;
  const eto = referenceEvapotranspiration(
    {
      dayOfYear: dayOfYear(date),
      tmax: known(row.tmax),
      tmin: known(row.tmin),
      rhmax: row.rhmax,
      rhmin: row.rhmin,
      dewPoint: known(row.dewPoint),
      wind: known(row.wind),
      windHeight: known(row.windHeight),
      solar: known(row.solar),
      rain: known(row.rain),
      givenEto: known(row.givenEto),
    },
    { latitude: row.latitude as Quantity<'°'>, elevation: known(row.elevationM) },
  );
  return eto.etoMm === null
    ? { date, etoMm: null, rainMm: row.rain, etoRelativeSd: 0 }
    : { date, etoMm: eto.etoMm, rainMm: row.rain, etoRelativeSd: eto.relativeSd };
}
