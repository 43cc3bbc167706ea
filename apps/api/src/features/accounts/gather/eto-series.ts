import type { StationDay } from '@rillbook/agronomy/station-days/station-day.js';
import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { type AccountDay, weatherSeries, type WeatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import { fingerprint } from './fingerprint.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { stationSeriesOf } from '../../weather/series/station-series.loader.js';

/** The days of one station with their reference ET, without holes in the calendar: judged, and filled as the weather feature documents. */
export class EtoSeries {
  private readonly versions = new Map<string, string>();
  private asSeries: WeatherSeries | undefined;

  private constructor(
    readonly firstDay: number,
    readonly days: readonly AccountDay[],
  ) {}

  static readonly none = new EtoSeries(0, []);

  /** A station's days as they are reckoned with. */
  static async of(tx: OrganizationTransaction, stationId: string): Promise<EtoSeries> {
    const days = (await stationSeriesOf.of(tx).load(stationId))?.days ?? [];
    return EtoSeries.ofDays(days.map(accountDay));
  }

  /** Days without holes in the calendar, oldest first. */
  static ofDays(days: readonly AccountDay[]): EtoSeries {
    return days.length ? new EtoSeries(dayNumberOfDate(days[0]!.date), days) : EtoSeries.none;
  }

  /** The last day number whose reference ET was measured at the station, or null: a month under way goes no further on estimates. */
  get lastKnownDay(): number | null {
    const index = this.days.findLastIndex((day) => day.etoMm !== null && !day.filledFrom);
    return index < 0 ? null : this.firstDay + index;
  }

  /** The same days as the account takes them. */
  get weather(): WeatherSeries {
    this.asSeries ??= weatherSeries(this.days);
    return this.asSeries;
  }

  /** Changes when anything does between two day numbers, both included. */
  versionBetween(from: number, until: number): string {
    const key = `${from} ${until}`;
    const present = this.versions.get(key) ?? fingerprint(this.between(from, until));
    this.versions.set(key, present);
    return present;
  }

  /** The days from one number to another, both included; days outside the series are not there. */
  between(from: number, until: number): readonly AccountDay[] {
    return this.days.slice(Math.max(0, from - this.firstDay), Math.max(0, until - this.firstDay + 1));
  }

  /** Sum over whole days; null when one of them is not known. [mm] */
  sumOf(what: 'etoMm' | 'rainMm', from: number, days: number): number | null {
    const { firstDay, [what]: values } = this.weather;
    let sum = 0;
    for (let day = from; day < from + days; day++) sum += values[day - firstDay] ?? Number.NaN;
    return Number.isNaN(sum) ? null : sum;
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

function accountDay({ date, eto, rainMm, rainFrom, rainSdMm }: StationDay): AccountDay {
  const rain = { rainMm, ...(rainSdMm > 0 && { rainSdMm }), ...(rainFrom === 'neighbour' && { rainFrom }) };
  if (eto.etoMm === null) return { date, etoMm: null, ...rain, etoRelativeSd: 0 };
  const day = { date, etoMm: eto.etoMm, ...rain, etoRelativeSd: eto.relativeSd };
  return eto.filling ? { ...day, filledFrom: eto.filling.from } : day;
}
