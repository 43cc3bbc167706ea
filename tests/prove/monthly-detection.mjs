// What readings once a month can find, and how often they find what is not there: the share of lasting leaks found within two readings by
// their size and by how months scatter, and false alarms by property and year. Drawn from seeds; the properties are invented.
import { judgeMonthly } from '../../libs/metering/dist/detection/monthly/judge-monthly.js';
import { judgeReadings } from '../../libs/metering/dist/detection/readings/judge-readings.js';
import { drawsOf, monthlyMeter } from '../support/worlds/monthly-meter.mjs';
import { misread, mistakes, readMeter } from '../support/worlds/read-meter.mjs';

const SITES = 2000;
const READINGS_A_YEAR = 365.25 / 30;
const HABIT = 24;
const NOISES = [0.02, 0.03, 0.04, 0.05, 0.06];
const LEAKS = [0.05, 0.1, 0.15, 0.2, 0.3];
const TOLD = { minConfidence: 0.8, minLitres: 0, minMoney: 0 };
const MOST_FALSE = 0.1;
const LEAST_RECALL = 0.95;
const LONG_HABIT = 36;
const TENTH = 0.1;

const alarms = (seed, world) =>
  judgeMonthly(monthlyMeter(seed, world), TOLD).filter(({ kind }) => kind === 'unexplained use' || kind === 'not delivering');

/** False alarms by property and year in three years of a habit that never changes. */
export function falseAlarms(sites, world) {
  let found = 0;
  for (let seed = 1; seed <= sites; seed += 1) found += alarms(seed, { readings: 36, ...world }).length;
  return found / ((sites * 36) / READINGS_A_YEAR);
}

/** Share of leaks, as a share of the months' own water, that are open after two readings. */
export function recall(sites, share, world, habit = HABIT) {
  let [found, judged] = [0, 0];
  for (let seed = 1; seed <= sites; seed += 1) {
    const evidence = monthlyMeter(seed, { readings: habit + 2, ...world, trouble: { fromReading: habit, share } });
    const begun = evidence.intervals[habit].fromLocalDay;
    const opened = judgeMonthly(evidence, TOLD).filter(({ kind }) => kind === 'unexplained use');
    // A false alarm that is still open hides the leak, and is no recall of it.
    if (opened.some(({ openedLocalDay, clearedLocalDay }) => openedLocalDay <= begun && clearedLocalDay === null)) continue;
    judged += 1;
    found += Number(opened.some(({ openedLocalDay }) => openedLocalDay > begun));
  }
  return found / judged;
}

const RIGHT = new Set(['first', 'ok', 'rollover']);
/** Above it a volume is implausible: more than twice what any of these meters passes on a summer's day. [register units a day] */
const MOST_A_DAY = 80;
const MOST_DOUBTED = 0.02;

/** Doubtful readings by meter and year where nobody made a mistake; a third of the meters roll over. */
function doubted(sites) {
  let found = 0;
  for (let seed = 1; seed <= sites; seed += 1)
    found += judgeReadings(readMeter(seed, { start: seed % 3 === 0 ? 98_500 : null })).filter(
      ({ judgement }) => !RIGHT.has(judgement),
    ).length;
  return found / ((sites * 35) / READINGS_A_YEAR);
}

/** Of misreads that make an implausible volume, how many were made and how many are found. */
function misreads(sites, mistake) {
  let [made, found] = [0, 0];
  for (let seed = 1; seed <= sites; seed += 1) {
    const draw = drawsOf(7 * seed + 1);
    const base = readMeter(seed);
    const at = 14 + Math.floor(draw() * 18);
    const series = misread(base, at, mistake, draw);
    const [before, wrong] = [series.readings[at - 1], series.readings[at]];
    const moved = wrong.register - before.register;
    if (wrong.register >= 10 ** base.digits || (moved >= 0 && moved <= MOST_A_DAY * (wrong.localDay - before.localDay))) continue;
    made += 1;
    found += Number(!RIGHT.has(judgeReadings(series)[at].judgement));
  }
  return { made, found };
}

function proveReadings(sites) {
  const rate = doubted(sites);
  const each = Object.keys(mistakes).map((mistake) => ({ mistake, ...misreads(sites, mistake) }));
  const lines = each.map(({ mistake, made, found }) => `${mistake} ${found} of ${made}`);
  const told = `readings doubted without a mistake: ${rate.toFixed(4)} a year; misreads found: ${lines.join(', ')}`;
  const [made, found] = ['made', 'found'].map((name) => each.reduce((sum, one) => sum + one[name], 0));
  if (!(rate < MOST_DOUBTED && found >= LEAST_RECALL * made)) throw new Error(`\n${told}`);
  return told;
}

export async function prove([count]) {
  const sites = Number(count ?? SITES);
  const lines = [
    `${sites} properties from seeds 1 to ${sites}, ${HABIT} months of habit`,
    `noise  false alarms a year  found of leaks of ${LEAKS.join(', ')}`,
  ];
  for (const noise of NOISES) {
    const rate = falseAlarms(sites, { noise });
    const found = LEAKS.map((share) => recall(sites, share, { noise }).toFixed(3));
    lines.push(`${noise.toFixed(2)}   ${rate.toFixed(4)}                ${found.join('  ')}`);
  }
  for (const [name, world] of [
    ['settings follow the season', { season: 0.8 }],
    ['ends of bills', { source: 'bills' }],
    ['runs not known', { runsKnown: false }],
    ['mixed meter', { indoorLitresPerDay: 1500 }],
  ])
    lines.push(`${name}: false alarms ${falseAlarms(sites, world).toFixed(4)}, found of 0.1: ${recall(sites, 0.1, world).toFixed(3)}`);
  const long = recall(sites, TENTH, {}, LONG_HABIT);
  lines.push(`12 months of habit: found of 0.1: ${recall(sites, TENTH, {}, 12).toFixed(3)}; ${LONG_HABIT} months: ${long.toFixed(3)}`);
  const rate = falseAlarms(sites, {});
  // Some chance is left to the draw: three standard errors of a rate counted so often.
  const chance = 3 * Math.sqrt(MOST_FALSE / ((sites * 36) / READINGS_A_YEAR));
  const short = 3 * Math.sqrt((LEAST_RECALL * (1 - LEAST_RECALL)) / sites);
  if (!(rate <= MOST_FALSE + chance && long >= LEAST_RECALL - short)) throw new Error(`\n${lines.join('\n')}`);
  lines.push(proveReadings(sites));
  return lines.join('\n');
}
