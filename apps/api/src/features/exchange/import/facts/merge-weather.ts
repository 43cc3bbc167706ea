import type { FileMerge } from '../directory/file-merge.js';
import { mergeWeatherDays } from './weather-merge.repository.js';

/** weather.csv */
export const mergeWeather: FileMerge<'weather'> = async ({ tx, directory, touched }, { columns, rows }) => {
  const days = rows.map(({ values: { station, ...day }, typed }) => ({ ...day, stationId: directory.stations.known(station), typed }));
  const merged = await mergeWeatherDays(tx, days, columns);
  if (merged.created + merged.changed) for (const { stationId } of days) touched.stations.add(stationId);
  return merged;
};
