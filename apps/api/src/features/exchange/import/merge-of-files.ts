import type { FileName } from '../columns/import-files.js';
import type { FileMerge } from './directory/file-merge.js';
import { mergeBills } from './facts/merge-bills.js';
import { mergePauses } from './facts/merge-pauses.js';
import { mergeReadings } from './facts/merge-readings.js';
import { mergeSettings } from './facts/merge-settings.js';
import { mergeUsage } from './facts/merge-usage.js';
import { mergeWeather } from './facts/merge-weather.js';
import { mergeRates } from './suppliers/merge-rates.js';
import { mergeRules } from './suppliers/merge-rules.js';
import { mergeBackflow } from './things/merge-backflow.js';
import { mergeClients } from './things/merge-clients.js';
import { mergeControllers } from './things/merge-controllers.js';
import { mergeMeters } from './things/merge-meters.js';
import { mergePlantings } from './things/merge-plantings.js';
import { mergeProperties } from './things/merge-properties.js';
import { mergeStations } from './things/merge-stations.js';
import { mergeZones } from './things/merge-zones.js';

/** How the rows of each file are merged with what is stored. */
export const mergeOfFiles: { readonly [File in FileName]: FileMerge<File> } = {
  clients: mergeClients,
  stations: mergeStations,
  properties: mergeProperties,
  meters: mergeMeters,
  controllers: mergeControllers,
  zones: mergeZones,
  plantings: mergePlantings,
  settings: mergeSettings,
  pauses: mergePauses,
  readings: mergeReadings,
  usage: mergeUsage,
  bills: mergeBills,
  weather: mergeWeather,
  rules: mergeRules,
  rates: mergeRates,
  backflow: mergeBackflow,
};
