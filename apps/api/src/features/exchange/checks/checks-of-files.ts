import type { FileName } from '../columns/import-files.js';
import { billsCheck, pausesCheck, readingsCheck, usageCheck, weatherCheck } from './history-checks.js';
import type { FileCheck, GroupCheck } from './file-check.js';
import type { Names } from '../drafts/names.js';
import { clientsCheck, controllersCheck, metersCheck, plantingsCheck, propertiesCheck, stationsCheck } from './portfolio-checks.js';
import { rateScheduleCheck, ratesCheck } from './rates-checks.js';
import { backflowCheck, rulesCheck } from './rules-checks.js';
import { settingsCheck, settingsFactCheck } from './settings-checks.js';
import { zonesCheck } from './zones-checks.js';

/** How the rows of each file are checked. A maker is called once for each reading of the file. */
export const fileChecks: Readonly<Record<FileName, (names: Names) => FileCheck>> = {
  clients: clientsCheck,
  stations: stationsCheck,
  properties: propertiesCheck,
  meters: metersCheck,
  controllers: controllersCheck,
  zones: zonesCheck,
  plantings: plantingsCheck,
  settings: settingsCheck,
  pauses: pausesCheck,
  readings: readingsCheck,
  usage: usageCheck,
  bills: billsCheck,
  weather: weatherCheck,
  rules: rulesCheck,
  rates: ratesCheck,
  backflow: backflowCheck,
};

/** The files whose lines stand or fall together by groups. */
export const groupChecks: Readonly<Partial<Record<FileName, (names: Names) => GroupCheck>>> = {
  settings: settingsFactCheck,
  rates: rateScheduleCheck,
};
