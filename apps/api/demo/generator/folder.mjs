// The import folder of one company, file by file.
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { csvText } from './tables/csv.mjs';
import { backflow, clients, controllers, meters, plantings, properties, zones } from './tables/places.mjs';
import { rates, rules, stations, weather } from './tables/valley.mjs';
import { bills, pauses, readings, settings, usage } from './tables/work.mjs';

const TABLES = {
  ...{ clients, properties, meters, controllers, zones, plantings, settings, pauses },
  ...{ readings, usage, bills, weather, stations, rules, rates, backflow },
};

/** Writes every table that has a row. */
export function writeFolder(world, into) {
  const folder = path.join(into, world.folder);
  mkdirSync(folder, { recursive: true });
  for (const [name, table] of Object.entries(TABLES)) {
    const filled = table(world);
    if (filled.rows.length > 0) writeFileSync(path.join(folder, `${name}.csv`), csvText(filled));
  }
}
