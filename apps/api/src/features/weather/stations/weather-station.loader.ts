import { loadById } from '../../../platform/records/kept-rows.js';
import { WeatherStationRow } from './weather-station.entity.js';

/** The weather station of an id, retired ones too. */
export const weatherStationOfId = loadById(WeatherStationRow);
