import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { execFileSync } from 'node:child_process';
import { Worker } from 'node:worker_threads';
import { millimetres } from '../../libs/units/dist/length.js';
import { seasonBalance } from '../../libs/agronomy/dist/water-balance/season/season-balance.js';
import { seasonByMonth } from '../../libs/agronomy/dist/water-balance/season/season-by-month.kernel.js';
import { compileC, NO_COMPILER } from '../support/c-baseline.mjs';
import { neededDepths } from '../../libs/metering/dist/volumes/needed-depths.js';
import { count, medians, percentile, ratio, times } from '../support/measure.mjs';

export const tells =
  'a zone over a day with rain, runoff, watering, stress and drainage, summed by month, against the same model in C and an object a day';

const ZONES = 20_000;
const DAYS = 365;
const CHAINED = 40;
const RUNS = 9;
const SAME = 1e-9;
const SUMS = 8;

const series = (of) => Float64Array.from({ length: DAYS }, (_, day) => of(day));
const eto = series((day) => 3.6 + 2.8 * Math.sin((day - 80) / 58));
const rain = series((day) => ((day < 110 || day > 290) && (day * 31) % 11 < 2 ? 2 + ((day * 7) % 23) : 0));
/** Three programs: three days a week, every other day, daily in the warm months. */
const programs = [
  series((day) => (day > 60 && day < 320 && [0, 2, 4].includes(day % 7) ? 14 : 0)),
  series((day) => (day % 2 === 0 ? 9 : 0)),
  series((day) => (day > 100 && day < 280 ? 8 : 0)),
];
const ends = Int32Array.from({ length: 12 }, (_, month) => (Date.UTC(2025, month + 1, 1) - Date.UTC(2025, 0, 1)) / 86_400_000);

const zoneOf = (at) => {
  const totalAvailableWater = 30 + (at % 70);
  const readilyAvailableWater = (0.35 + (at % 5) * 0.05) * totalAvailableWater;
  return {
    plantCoefficient: 0.25 + (at % 60) / 100,
    totalAvailableWater,
    readilyAvailableWater,
    rootedFraction: at % 5 === 4 ? 0.4 : 1,
    retention: at % 2 ? 40 + (at % 60) : Number.POSITIVE_INFINITY,
    irrigationRate: 0.2 + (at % 9) / 20,
    depletion: readilyAvailableWater,
  };
};
const zones = Array.from({ length: ZONES }, (_, at) => zoneOf(at));

/** The same zone with the library's day objects; its sums are compared, and its time by zone-day. */
function chained(zone, at) {
  const dates = Array.from({ length: DAYS }, (_, day) => new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10));
  const retention = zone.retention / 25.4;
  return seasonBalance({
    days: dates.map((date, day) => ({ date, eto: eto[day], rain: rain[day], plantCoefficient: zone.plantCoefficient })),
    events: dates.flatMap((date, day) =>
      programs[at % 3][day] > 0 ? [{ date, irrigation: millimetres(programs[at % 3][day] * zone.irrigationRate), wettedFraction: 1 }] : [],
    ),
    zone: {
      availableWater: zone.totalAvailableWater / zone.rootedFraction,
      rootDepth: 1000,
      rootedFraction: zone.rootedFraction,
      tableFraction: zone.readilyAvailableWater / zone.totalAvailableWater,
      adjustsFraction: false,
      curveNumber: Number.isFinite(retention) ? 1000 / (retention + 10) : null,
      capillaryRise: 0,
    },
    depletion: zone.depletion,
  });
}

function kernel(from, until, written) {
  for (let at = from; at < until; at++)
    seasonByMonth({ eto, rain, minutes: programs[at % 3] }, ends, zones[at], written.subarray(at * 12 * SUMS, (at + 1) * 12 * SUMS));
}

function judge(written) {
  for (let at = 0; at < CHAINED; at++) {
    const { months } = chained(zones[at], at);
    months.forEach((sums, month) => {
      const at8 = SUMS * (12 * at + month);
      const pairs = [
        sums.etc,
        sums.evapotranspiration,
        sums.rain - sums.runoff - sums.rainBesideRoots,
        sums.runoff,
        sums.irrigation,
        sums.deepPercolation,
        sums.shortfall,
      ];
      pairs.forEach((value, place) => {
        if (!(Math.abs(value - written[at8 + place]) <= SAME))
          throw new Error(`zone ${at}, month ${month + 1}, sum ${place}: ${written[at8 + place]}, with objects ${value}`);
      });
    });
  }
}

/** The model in C: its times, and the sum of all its sums. */
function inC() {
  const program = compileC(readFileSync(path.join(import.meta.dirname, 'baselines/season-by-month.c'), 'utf8'));
  if (!program) return null;
  const numbers = [DAYS, ZONES, RUNS + 2, ...eto, ...rain, ...ends, ...programs.flatMap((minutes) => [...minutes])];
  for (const z of zones)
    numbers.push(
      z.plantCoefficient,
      z.totalAvailableWater,
      z.readilyAvailableWater,
      z.rootedFraction,
      z.retention,
      z.irrigationRate,
      z.depletion,
    );
  const input = numbers.map((value) => (value === Number.POSITIVE_INFINITY ? 'inf' : value)).join('\n');
  const { ms, sum } = JSON.parse(execFileSync(program, { input, encoding: 'utf8', maxBuffer: 256 << 20 }));
  return { ms: percentile(ms.slice(2), 0.5), sum };
}

/** Properties whose zones all differ, and the balances that an account asks of each zone: as it came, and four inputs moved to either side. */
const [PROPERTIES, ZONES_EACH, BALANCES] = [300, 20, 9];
const NEED_DAYS = PROPERTIES * ZONES_EACH * DAYS * BALANCES;
const WARM_UP = 90;
const RAIN_SD = 0.15;

/** What accounts of a year need, as the product computes it: every month of every zone with its own beginning. Gives the sum. [mm] */
function need(from, until) {
  // A series of its own: what the product remembers of another is not measured.
  const around = (values) => Float64Array.from({ length: WARM_UP + DAYS }, (_, day) => values[(day + DAYS - WARM_UP) % DAYS]);
  const weather = {
    firstDay: -WARM_UP,
    etoMm: around(eto),
    rainMm: around(rain),
    etoRelativeSd: new Float64Array(WARM_UP + DAYS).fill(0.05),
  };
  let sum = 0;
  for (let property = from; property < until; property++) {
    const own = Array.from({ length: ZONES_EACH }, (_, at) => needingZone(property * ZONES_EACH + at));
    const months = Array.from(ends, (end, month) => ({
      firstDay: month ? ends[month - 1] : 0,
      days: end - (month ? ends[month - 1] : 0),
      zones: own,
    }));
    for (const depths of neededDepths(weather, months, RAIN_SD)) for (const { netMm } of depths) sum += netMm;
  }
  return sum;
}

const needingZone = (at) => ({
  plantCoefficient: 0.2 + at / (PROPERTIES * ZONES_EACH),
  rawMm: 10 + (at % 50),
  plantRelativeSd: 0.15,
  storageRelativeSd: 0.2,
});

/** Runs of work: the median of its time and of the processor time that the process took for it. [ms] */
async function clocked(work) {
  const own = [];
  const all = await times(
    async () => {
      const before = process.cpuUsage();
      await work();
      const { user, system } = process.cpuUsage(before);
      own.push((user + system) / 1000);
    },
    { warmUps: 2, runs: RUNS },
  );
  return { ms: percentile(all, 0.5), ownMs: percentile(own.slice(2), 0.5) };
}

/** Half of the zones in each of two threads, with warm-ups of their own. [ms] */
async function onTwoCores() {
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-balance-'));
  const file = path.join(folder, 'half.mjs');
  writeFileSync(
    file,
    `import { parentPort, workerData } from 'node:worker_threads';
     import { half, halfOfNeed } from ${JSON.stringify(import.meta.url)};
     const works = { half, halfOfNeed };
     parentPort.on('message', (name) => parentPort.postMessage(works[name](workerData)));`,
  );
  const shared = new SharedArrayBuffer(ZONES * 12 * SUMS * 8);
  const workers = [0, 1].map((which) => new Worker(file, { workerData: { which, shared } }));
  const both = (name) =>
    Promise.all(
      workers.map(
        (worker) =>
          new Promise((resolve) => {
            worker.once('message', resolve);
            worker.postMessage(name);
          }),
      ),
    );
  try {
    const balance = await clocked(() => both('half'));
    const sums = await both('halfOfNeed');
    const needed = await clocked(() => both('halfOfNeed'));
    return { ...balance, needed, needSum: sums[0] + sums[1], written: new Float64Array(shared) };
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One thread's half of the zones. */
export const half = ({ which, shared }) => kernel((which * ZONES) / 2, ((which + 1) * ZONES) / 2, new Float64Array(shared));

/** One thread's half of the properties. */
export const halfOfNeed = ({ which }) => need((which * PROPERTIES) / 2, ((which + 1) * PROPERTIES) / 2);

export async function bench() {
  const written = new Float64Array(ZONES * 12 * SUMS);
  kernel(0, ZONES, written);
  judge(written);
  const sum = written.reduce((total, value) => total + value, 0);
  const took = await medians(
    {
      one: () => kernel(0, ZONES, written),
      objects: () => {
        for (let at = 0; at < CHAINED; at++) chained(zones[at], at);
      },
    },
    { warmUps: 3, runs: RUNS },
  );
  const one = await clocked(() => kernel(0, ZONES, written));
  const needed = await clocked(() => need(0, PROPERTIES));
  const two = await onTwoCores();
  const needSum = need(0, PROPERTIES);
  if (!(Math.abs(two.needSum - needSum) <= SAME * needSum)) throw new Error(`two threads need ${two.needSum} mm, one ${needSum} mm`);
  if (two.written.some((value, at) => value !== written[at])) throw new Error('two threads come to other sums than one');
  const c = inC();
  if (c && !(Math.abs(c.sum - sum) <= SAME * sum)) throw new Error(`C sums to ${c.sum}, the kernel to ${sum}`);
  const perSecond = (ms) => `${((ZONES * DAYS) / ms / 1000).toFixed(0)} M zone-days/s`;
  const objects = took.objects * (ZONES / CHAINED);
  return [
    `the kernel ${perSecond(took.one)} on one core, ${perSecond(one.ownMs)} in a second of processor time, ${perSecond(two.ms)} on two cores, an object a day ${count((ZONES * DAYS) / objects)} zone-days/ms`,
    c ? `ratio: the kernel takes ${ratio(took.one / c.ms)} the time of the same model in C (${perSecond(c.ms)})` : NO_COMPILER,
    `ratio: the kernel is ${ratio(objects / took.one)} as fast as an object a day; two threads are ${ratio(one.ms / two.ms)} as fast as one and take ${ratio(two.ownMs / one.ownMs)} its processor time`,
    `the need that accounts ask for, ${BALANCES} balances a zone: ${needRate(needed.ms)} on one thread, ${needRate(needed.ownMs)} in a second of processor time, ${needRate(two.needed.ms)} on two`,
    `ratio: two threads are ${ratio(needed.ms / two.needed.ms)} as fast as one and take ${ratio(two.needed.ownMs / needed.ownMs)} its processor time`,
  ];
}

const needRate = (ms) => `${(NEED_DAYS / ms / 1000).toFixed(0)} M zone-days/s`;
