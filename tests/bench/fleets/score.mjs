// Scores the product on a labelled fleet: a folder with import/, truth.csv and, if there, gaps.csv.
//   node tests/bench/fleets/score.mjs FOLDER [--findings FILE] [--json FILE] [--draw FILE] [--keep FILE] [--history yes|no]
// --findings scores a findings.csv that is already there; --keep writes the one that the product gave.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { records } from './scoring/csv.mjs';
import { curvePicture } from './scoring/draw.mjs';
import { HARMLESS } from './scoring/families.mjs';
import { floorOf, settingsGaps } from './scoring/gaps.mjs';
import { matched } from './scoring/match.mjs';
import { throughProduct } from './scoring/product.mjs';
import { reportLines } from './scoring/report.mjs';
import { sitesOf, spanOf, stepsOf } from './scoring/sites.mjs';
import { tally } from './scoring/tally.mjs';

const MONTHS_A_YEAR = 12;
const NEEDED = ['properties', 'meters', 'readings', 'usage', 'bills', 'settings'];

/** Properties of several fleets are told apart by the fleet's name before theirs. */
const within = (name, rows) => (name ? rows.map((row) => ({ ...row, property: `${name}/${row.property}` })) : rows);

function readFleet({ name = '', files, truth, gaps = '', findings, history }) {
  const tables = Object.fromEntries(NEEDED.map((file) => [file, within(name, records(files[`${file}.csv`]))]));
  const sites = sitesOf(tables);
  const span = spanOf(sites);
  const rows = within(name, records(truth));
  const match = matched({ truth: rows, findings: within(name, records(findings)), sites, last: span.last, history });
  const reference = within(name, records(gaps));
  const usual = new Map(reference.map((row) => [row.property, Number(row.usual_month_gal)]));
  for (const fault of match.faults)
    fault.gallons = fault.share !== null && usual.has(fault.property) ? Math.abs(fault.share) * usual.get(fault.property) : null; // prettier-ignore
  // On a mixed meter the water of the house runs too: its scatter is not the meter's noise.
  const mixed = [...sites].filter(([, site]) => site.isMixed).map(([property]) => property);
  const wrong = rows.filter(({ kind }) => !HARMLESS.includes(kind) && kind !== 'wrong recorded flows').map(({ property }) => property);
  // As they stand at the end, findings speak of one month.
  const siteYears = sites.size * (match.keepsHistory ? span.years : 1 / MONTHS_A_YEAR);
  return { match, sites, siteYears, reference, noisy: [...wrong, ...mixed] };
}

/**
 * The score of several fleets together.
 *
 * @param {{name?: string, files: Record<string, string>, truth: string, gaps?: string, findings: string, history?: boolean}[]} fleets texts;
 *   files by name
 * @returns the score: see scoring/tally.mjs, scoring/gaps.mjs
 */
export function scoreFleets(fleets) {
  const read = fleets.map(readFleet);
  const all = (of) => read.flatMap(of);
  const match = {
    faults: all(({ match: one }) => one.faults),
    findings: all(({ match: one }) => one.findings),
    keepsHistory: read.every(({ match: one }) => one.keepsHistory),
  };
  const siteYears = read.reduce((sum, one) => sum + one.siteYears, 0);
  const reference = all((one) => one.reference);
  return {
    ...tally(match, { siteYears, properties: read.reduce((sum, one) => sum + one.sites.size, 0) }),
    settingsGaps: settingsGaps(reference, match.findings),
    floor: floorOf(
      reference,
      new Set(all(({ noisy }) => noisy)),
      new Map(all(({ sites }) => [...sites].map(([property, site]) => [property, stepsOf(site)]))),
    ),
  };
}

/** The score of one fleet. */
export const scoreFleet = (fleet) => scoreFleets([fleet]);

/** The last day on which anything came in: the fleet's today. */
export function lastDayOf(files) {
  const tables = Object.fromEntries(NEEDED.map((name) => [name, records(files[`${name}.csv`])]));
  return new Date(spanOf(sitesOf(tables)).last - 1).toISOString().slice(0, 10);
}

const HISTORY = { yes: true, no: false };

async function main() {
  const string = { type: 'string' };
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { findings: string, json: string, draw: string, keep: string, history: string },
  });
  const [folder] = positionals;
  if (!folder) throw new Error('Name the FOLDER that has import/ and truth.csv.');
  const into = path.join(folder, 'import');
  const read = (...place) => readFileSync(path.join(...place), 'utf8');
  const files = Object.fromEntries(
    readdirSync(into)
      .filter((file) => file.endsWith('.csv'))
      .map((file) => [file, read(into, file)]),
  ); // prettier-ignore
  const gaps = existsSync(path.join(folder, 'gaps.csv')) ? read(folder, 'gaps.csv') : '';
  const given = values.findings ? { findings: read(values.findings), seconds: {} } : null;
  const run =
    given ??
    (await throughProduct(into, lastDayOf(files)).then(({ exported, seconds }) => ({ findings: exported['findings.csv'], seconds })));
  const score = scoreFleet({ files, truth: read(folder, 'truth.csv'), gaps, findings: run.findings, history: HISTORY[values.history] });
  if (values.keep) writeFileSync(values.keep, run.findings);
  if (values.draw) writeFileSync(values.draw, curvePicture(score));
  if (values.json) writeFileSync(values.json, `${JSON.stringify(score, null, 2)}\n`);
  console.log(reportLines(score).join('\n'));
  console.log(
    Object.entries(run.seconds)
      .map(([what, seconds]) => `${what} ${seconds.toFixed(1)} s`)
      .join(', '),
  ); // prettier-ignore
}

if (process.argv[1] === import.meta.filename) await main();
