import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../../platform/records/merge-counts.js';
import type { ImportedValues } from '../../rows/imported-row.js';

/** A weather day as a file tells it. */
export type WeatherToMerge = Omit<ImportedValues['weather'], 'station'> & {
  readonly stationId: string;
  readonly typed: Readonly<Record<string, string>>;
};

/** The columns of weather.csv, the property and the column of the table that each fills. */
const VALUES: readonly (readonly [column: string, property: string, name: string])[] = [
  ['tmax_f', 'tmaxC', 'tmax_c'],
  ['tmin_f', 'tminC', 'tmin_c'],
  ['rhmax', 'rhMaxPercent', 'rh_max_percent'],
  ['rhmin', 'rhMinPercent', 'rh_min_percent'],
  ['dewpoint_f', 'dewPointC', 'dew_point_c'],
  ['wind_mph', 'windMPerS', 'wind_m_per_s'],
  ['wind_height_ft', 'windHeightM', 'wind_height_m'],
  ['solar_mj_m2', 'solarMjPerM2', 'solar_mj_per_m2'],
  ['rain_in', 'rainMm', 'rain_mm'],
  ['eto_in', 'givenEtoMm', 'given_eto_mm'],
];

/** Only the file's own columns are written over a day that is there. */
function statement(columns: ReadonlySet<string>): string {
  const own = VALUES.filter(([column]) => columns.has(column)).map(([, , name]) => name);
  const names = VALUES.map(([, , name]) => name);
  const of = (table: string, list: readonly string[]): string => list.map((name) => `${table}.${name}`).join(', ');
  const typed = '(weather_day.typed - $3::text[]) || excluded.typed';
  const differs = `(${['weather_day.typed', of('weather_day', own)].filter(Boolean).join(', ')}) is distinct from (${[typed, of('excluded', own)].filter(Boolean).join(', ')})`;
  return `insert into weather_day (organization_id, station_id, day, typed, ${names.join(', ')})
select $1, new."stationId", new.day, new.typed, ${VALUES.map(([, property]) => `new."${property}"`).join(', ')}
from json_to_recordset($2) as new ("stationId" uuid, day date, typed jsonb, ${VALUES.map(([, property]) => `"${property}" double precision`).join(', ')})
order by new."stationId", new.day
on conflict (organization_id, station_id, day) do update set typed = ${typed}${own.map((name) => `, ${name} = excluded.${name}`).join('')}
where ${differs}
returning weather_day.xmax = 0 as created`;
}

/** Merges weather days by station and day in one statement; a column that the file does not have keeps what is stored. */
export async function mergeWeatherDays(
  tx: OrganizationTransaction,
  days: readonly WeatherToMerge[],
  columns: ReadonlySet<string>,
): Promise<MergeCounts> {
  // xmax is 0 in a row that was inserted now, not updated.
  const written = await tx.query<{ created: boolean }>(statement(columns), [tx.organizationId, JSON.stringify(days), [...columns]]);
  const created = written.filter((row) => row.created).length;
  return { created, changed: written.length - created, same: days.length - written.length };
}
