// Findings on labelled fleets that were drawn a moment ago: recall, false alarms, delays, zones named, misreads. `npm run prove -- detection 60 SEED`
// takes another number of site-years and the seed of an earlier run; `--draw FILE` writes the curve, `--json FILE` the score.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { labelledFleet, writeFleet } from '../bench/fleets/generate.mjs';
import { scoreFleets } from '../bench/fleets/score.mjs';
import { curvePicture } from '../bench/fleets/scoring/draw.mjs';
import { throughProduct } from '../bench/fleets/scoring/product.mjs';
import { reportLines } from '../bench/fleets/scoring/report.mjs';

export const readsShared = false;

const SITE_YEARS = 600;
const MONTHS = 16;
/** Several fleets have several climates and calendars; each is read into memory as a whole. */
const PROPERTIES_A_FLEET = 100;

/** More feeds than most companies have, so that there are enough leaks to be seen by the hour. */
const HOURLY = 0.4;

/** Steady flow is judged on leaks alone, all by the hour: a mixed fleet has too few above the meters' floor. */
const LEAKS = { properties: 180, months: 6, hourly: 1, faulty: 0.9, only: ['continuous leak'] };

/** What is promised: each line's name, how the score tells it, and its bound. A recall of which nothing could be judged is not kept. */
const PROMISES = [
  [
    'unexplained use of at least 10 %, monthly, within two readings',
    (score) => score.unexplainedUse.monthly?.recallInTime,
    { least: 0.95 },
  ],
  ['unexplained use of at least 10 %, hourly, within two days', (score) => score.unexplainedUse.hourly?.recallInTime, { least: 0.95 }],
  ['false alarms a site-year', (score) => score.falseAlarms.perSiteYear, { most: 0.1 }],
  ["steady flow above the meter's floor", (score) => score.steady.above.recall, { least: 0.98 }],
  ['the right zone named', (score) => score.attribution.shareOfAll, { least: 0.9 }],
  ['misreads', (score) => score.allMisreads.recall, { least: 0.95 }],
  ['rollovers called misread', (score) => score.rollovers.calledMisread, { most: 0 }],
  ['wrong recorded flows that lead to a flow test', (score) => score.flowTests.recall, { least: 0.95 }],
  ['leak alarms on wrong recorded flows', (score) => score.flowTests.leakAlarms, { most: 0 }],
];

function broken(score) {
  return PROMISES.flatMap(([what, of, { least, most }]) => {
    const value = of(score) ?? null;
    const isKept = value !== null && (least === undefined ? value <= most : value >= least);
    const bound = least === undefined ? `at most ${most}` : `at least ${least}`;
    return isKept ? [] : [`${what}: ${value === null ? 'not judged' : Number(value.toFixed(3))}, promised ${bound}`];
  });
}

async function runFleet(name, wish) {
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-labelled-'));
  try {
    const fleet = labelledFleet(wish);
    writeFleet(fleet, folder);
    const { exported } = await throughProduct(path.join(folder, 'import'), fleet.lastDay);
    return { name, ...fleet, findings: exported['findings.csv'] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function prove(words = []) {
  const { values, positionals } = parseArgs({
    args: words,
    allowPositionals: true,
    options: { draw: { type: 'string' }, json: { type: 'string' } },
  }); // prettier-ignore
  const [siteYears = SITE_YEARS, wish] = positionals;
  const seed = wish === undefined ? Date.now() % 2 ** 31 : Number(wish);
  let left = Math.ceil((Number(siteYears) * 12) / MONTHS);
  if (!(left > 0 && Number.isInteger(seed)))
    throw new Error(`${siteYears} ${wish ?? ''}: give a number of site-years and, if any, a whole number as seed`); // prettier-ignore
  const fleets = [];
  for (let at = 0; left > 0; at += 1, left -= PROPERTIES_A_FLEET)
    fleets.push(
      await runFleet(`${seed + at}`, { seed: seed + at, properties: Math.min(left, PROPERTIES_A_FLEET), months: MONTHS, hourly: HOURLY }),
    );
  const leaks = await runFleet('leaks', { seed: seed + fleets.length, ...LEAKS });
  const score = { ...scoreFleets(fleets), steady: scoreFleets([leaks]).steady };
  if (values.draw) writeFileSync(values.draw, curvePicture(score));
  if (values.json) writeFileSync(values.json, `${JSON.stringify(score, null, 2)}\n`);
  const says = [`seed ${seed}, ${fleets.length} fleets`, ...reportLines(score)].join('\n');
  const not = broken(score);
  if (not.length) throw new Error(`${says}\n\nnot kept:\n  ${not.join('\n  ')}`);
  return says;
}
