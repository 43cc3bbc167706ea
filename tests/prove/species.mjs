// The list of assessed plants (University of California WUCOLS IV, 2014) beside the checkout: its counts by region are those published, the
// published sample of species has the published codes, and every code has its place among the product's categories of water need.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { waterNeedOfCode } from '../../libs/agronomy/dist/plants/published/category-range.js';

export const readsShared = true;

const shared = path.resolve(import.meta.dirname, '../../../shared');
const CODES = ['VL', 'LO', 'M', 'H', 'U', 'NA'];
/** Plants by code, region 1 first. */
const COUNTS = [
  [189, 1036, 1397, 103, 694, 185],
  [114, 731, 952, 118, 1340, 349],
  [337, 915, 1303, 139, 737, 173],
  [150, 754, 1072, 143, 1156, 329],
  [39, 180, 374, 21, 2054, 936],
  [27, 216, 490, 17, 2031, 823],
];

/** Cells of a line of the list; names with commas stand in quotes. */
const cellsOf = (line) =>
  [...line.matchAll(/(?:^|,)("(?:[^"]|"")*"|[^,]*)/g)].map(([, cell]) => cell.replace(/^"(.*)"$/, '$1').replaceAll('""', '"'));

function plantsOfTheList() {
  const [head, ...lines] = readFileSync(path.join(shared, 'data/species/wucols_species.csv'), 'utf8').trim().split(/\r?\n/);
  const columns = cellsOf(head).flatMap((name, at) => (/^r[1-6]_/.test(name) ? [[at, name.slice(3).replaceAll('_', ' ')]] : []));
  const plants = lines.map((line) => {
    const cells = cellsOf(line);
    return { name: cells[1], codes: columns.map(([at]) => cells[at]) };
  });
  return { regions: columns.map(([, name]) => name), plants };
}

/** Published rows about one species, with its code in each region. */
function publishedSample() {
  const entries = JSON.parse(readFileSync(path.join(shared, 'standards/checks.json'), 'utf8'));
  return entries
    .filter(({ inputs }) => inputs.botanical_name)
    .map(({ id, inputs, expected }) => ({
      id,
      name: inputs.botanical_name.value,
      codes: [1, 2, 3, 4, 5, 6].map((at) => expected[`region${at}`].value),
    }));
}

export async function prove() {
  const { regions, plants } = plantsOfTheList();
  const faults = [];
  for (const { name, codes } of plants)
    codes.forEach((code) => waterNeedOfCode(code) ?? (['U', 'NA'].includes(code) || faults.push(`${name}: ${code}`)));
  COUNTS.forEach((published, region) => {
    const counted = CODES.map((code) => plants.filter(({ codes }) => codes[region] === code).length);
    if (String(counted) !== String(published)) faults.push(`region ${region + 1}: ${counted}, published are ${published}`);
  });
  const named = JSON.parse(readFileSync(path.join(shared, 'standards/checks.json'), 'utf8')).find(({ id }) => id === 'pl-003');
  regions.forEach((region, at) => {
    const published = named.expected[String(at + 1)].value;
    if (region !== published) faults.push(`region ${at + 1} is ${region}, published is ${published}`);
  });
  const sample = publishedSample();
  for (const { id, name, codes } of sample) {
    const found = plants.find((plant) => plant.name === name);
    if (String(found?.codes) !== String(codes)) faults.push(`${id} ${name}: ${found?.codes ?? 'not in the list'}, published are ${codes}`);
  }
  if (sample.length === 0) faults.push('no published sample was found');
  if (faults.length) throw new Error(`\n  ${faults.join('\n  ')}`);
  return `${plants.length} plants in ${regions.length} regions: counts as published, and ${sample.length} sample species have the published codes`;
}
