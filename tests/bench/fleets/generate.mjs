// Writes a labelled fleet: an import folder, and beside it what was really wrong.
//   node tests/bench/fleets/generate.mjs --seed N --properties K --months M --out FOLDER [--hourly SHARE] [--faulty SHARE] [--only kind,kind]
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { dateText, dayOf, monthsFrom, monthText } from '../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../apps/api/demo/generator/sky/random.mjs';
import { csvText } from '../../../apps/api/demo/generator/tables/csv.mjs';
import { climateNames, stationOf } from './world/climate.mjs';
import { drawFaults, faultKinds } from './world/faults.mjs';
import { drawProperty } from './world/property.mjs';
import { drawVisits } from './world/registers.mjs';
import { gapsTable, importTables, truthTable } from './world/tables.mjs';
import { setTimers } from './world/timers.mjs';
import { pour, usualMonth } from './world/water.mjs';

const FIRST_MONTHS = monthsFrom('2023-03', '2024-08');
/** The water balance starts this many days before the first account. */
const WEATHER_DAYS_BEFORE = 100;
const STATIONS = 3;
const HOURLY = 0.25;
/** Share of properties on which something goes wrong. */
const FAULTY = 0.5;

function daysOf(seed, months) {
  const first = diceFor(`fleet ${seed}`).pick(FIRST_MONTHS);
  const from = dayOf(`${first}-01`);
  const names = monthsFrom(first, monthText(from + Math.round((months - 0.5) * 30.44)));
  const last = dayOf(`${monthText(dayOf(`${names.at(-1)}-28`) + 5)}-01`) - 1;
  return { from, last, months: names, weatherFrom: from - WEATHER_DAYS_BEFORE };
}

function live(property, fleet) {
  property.visits = drawVisits(property, fleet);
  setTimers(property, property.visits, fleet);
  property.usual = usualMonth(property, fleet);
  property.faults = drawFaults(property, fleet, property.usual);
  pour(property, fleet);
  return property;
}

/**
 * @param wish seed, properties, months, hourly (share of properties with an hourly feed), faulty (share on which
 *   something goes wrong), only (kinds of fault, or null for all)
 * @returns the fleet with all that is true of it; the same for the same wish
 */
export function drawnFleet({ seed, properties, months, hourly = HOURLY, faulty = FAULTY, only = null }) {
  const unknown = (only ?? []).filter((kind) => !faultKinds.includes(kind));
  if (unknown.length) throw new Error(`There is no fault "${unknown.join('", "')}". There are: ${faultKinds.join(', ')}.`);
  const fleet = { seed, hourly, faulty, only, ...daysOf(seed, months) };
  const dice = diceFor(`stations ${seed}`);
  fleet.stations = Array.from({ length: STATIONS }, (_, index) => stationOf(fleet, index, dice.pick(climateNames)));
  fleet.properties = Array.from({ length: properties }, (_, index) => live(drawProperty(fleet, index + 1), fleet));
  return fleet;
}

/**
 * The texts of a drawn fleet; what was misread is noted on it.
 *
 * @returns {{files: Record<string, string>, truth: string, gaps: string, lastDay: string, siteYears: number}}
 */
export function textsOf(fleet) {
  const filled = Object.entries(importTables(fleet)).filter(([, table]) => table.rows.length);
  return {
    files: Object.fromEntries(filled.map(([name, table]) => [`${name}.csv`, csvText(table)])),
    truth: csvText(truthTable(fleet)),
    gaps: csvText(gapsTable(fleet)),
    lastDay: dateText(fleet.last),
    siteYears: (fleet.properties.length * (fleet.last - fleet.from + 1)) / 365.25,
  };
}

/** The texts of the fleet of a wish. */
export const labelledFleet = (wish) => textsOf(drawnFleet(wish));

/** Writes FOLDER/import, FOLDER/truth.csv and FOLDER/gaps.csv. */
export function writeFleet({ files, truth, gaps }, folder) {
  mkdirSync(path.join(folder, 'import'), { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, 'import', name), text);
  writeFileSync(path.join(folder, 'truth.csv'), truth);
  writeFileSync(path.join(folder, 'gaps.csv'), gaps);
}

if (process.argv[1] === import.meta.filename) {
  const string = { type: 'string' };
  const options = { seed: string, properties: string, months: string, out: string, hourly: string, faulty: string, only: string };
  const { values } = parseArgs({ options });
  if (!values.out) throw new Error('Say where with --out FOLDER.');
  const fleet = labelledFleet({
    seed: Number(values.seed ?? 1),
    properties: Number(values.properties ?? 20),
    months: Number(values.months ?? 14),
    hourly: Number(values.hourly ?? HOURLY),
    faulty: Number(values.faulty ?? FAULTY),
    only: values.only?.split(',').map((kind) => kind.trim()) ?? null,
  });
  writeFleet(fleet, values.out);
  console.log(
    `${values.out}: ${fleet.siteYears.toFixed(1)} site-years to ${fleet.lastDay}, ${fleet.truth.split('\n').length - 2} lines of truth`,
  );
}
