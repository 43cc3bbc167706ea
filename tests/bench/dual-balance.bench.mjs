import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { canopyDay } from '../../libs/agronomy/dist/water-balance/canopy/canopy-day.js';
import { canopySeries } from '../../libs/agronomy/dist/water-balance/canopy/canopy-series.js';
import { establishedPlants } from '../../libs/agronomy/dist/water-balance/canopy/growing-plants.js';
import { climateTerm } from '../../libs/agronomy/dist/water-balance/canopy/maximum-crop-coefficient.js';
import { runDualBalance } from '../../libs/agronomy/dist/water-balance/dual/dual-balance.kernel.js';
import { dualDay } from '../../libs/agronomy/dist/water-balance/dual/dual-day.js';
import { kernelDays, kernelZone } from '../../libs/agronomy/dist/water-balance/dual/dual-series.js';
import { compileC, NO_COMPILER, runC } from '../support/c-baseline.mjs';
import { count, medians, ratio } from '../support/measure.mjs';

export const tells =
  'surface layer and root zone of a zone over a day with dual coefficients, against the chain of day objects and the same model in C';

const ZONES = 2000;
const DAYS = 365;
/** The chain of objects is run for fewer zones; its time is compared by zone-day. */
const CHAINED = 100;
const SAME = 1e-9;
const RUNS = 9;

const series = (of) => Float64Array.from({ length: DAYS }, (_, day) => of(day));
const eto = series((day) => 4.5 + 3 * Math.sin((day - 80) / 58));
const rain = series((day) => (day % 9 === 0 ? 6 + ((day * 7) % 31) : 0));
const air = Array.from({ length: DAYS }, (_, day) => ({ windSpeedAt2M: 1 + (day % 5), minimumHumidity: 20 + ((day * 3) % 50) }));
const climate = Float64Array.from(air, ({ windSpeedAt2M, minimumHumidity }) => climateTerm(windSpeedAt2M, minimumHumidity));

/** Sprinklers, drip and no irrigation at all. */
const waters = [1, 0.35, 0].map((share, kind) => ({
  eto,
  rain,
  irrigation: series((day) => (share > 0 && day > 60 && day < 300 && day % (kind + 2) === 0 ? 10 : 0)),
  irrigatedFraction: series(() => share || 1),
}));

/** Lawns and shrubs that stand all year, and annuals that grow. */
const plantings = [
  establishedPlants(0.75, 0.08, 250),
  establishedPlants(0.45, 0.9, 500),
  {
    stages: { initialDays: 30, developmentDays: 60, midDays: 200, lateDays: 40 },
    basalCoefficients: { initial: 0.15, mid: 1.05, end: 0.5 },
    minimumCoefficient: 0.15,
    initialHeight: 0.05,
    fullHeight: 0.6,
    initialRootDepth: 100,
    fullRootDepth: 400,
  },
];

function zoneOf(at) {
  const zone = {
    totalEvaporableWater: 15 + (at % 12),
    readilyEvaporableWater: 5 + (at % 6),
    availableWater: 80 + (at % 90),
    tableFraction: 0.35 + (at % 5) * 0.05,
    mulchCover: (at % 4) / 4,
    curveNumber: at % 2 ? 60 + (at % 30) : null,
    capillaryRise: 0,
  };
  const start = { surfaceDepletion: zone.totalEvaporableWater, depletion: 5, wettedFraction: 1 };
  return { zone, start, plants: plantings[at % 3], planting: at % 3, water: waters[(at % 7) % 3], watering: (at % 7) % 3 };
}

const total = ({ evaporation, transpiration, deepPercolation, runoff }) => {
  let sum = 0;
  for (let day = 0; day < DAYS; day++) sum += evaporation[day] + transpiration[day] + deepPercolation[day] + runoff[day];
  return sum;
};

/** The kernel over all zones; the canopy of a planting made once, or anew for each zone. */
function kernel(zones, shares) {
  const canopies = plantings.map((plants) => canopySeries(plants, climate));
  const days = kernelDays(DAYS);
  let sum = 0;
  for (const { kernelled, planting, water, plants } of zones) {
    runDualBalance(water, shares ? canopies[planting] : canopySeries(plants, climate), kernelled, days);
    sum += total(days);
  }
  return sum;
}

function chain({ zone, start, plants, water }, each) {
  let state = start;
  for (let day = 0; day < DAYS; day++) {
    const input = { eto: eto[day], rain: rain[day], irrigation: water.irrigation[day], irrigatedFraction: water.irrigatedFraction[day] };
    state = dualDay(state, { ...input, canopy: canopyDay(plants, day, air[day]) }, zone);
    each(state, day);
  }
}

function objects(zones) {
  let sum = 0;
  for (const zone of zones.slice(0, CHAINED)) {
    chain(zone, ({ evaporation, transpiration, deepPercolation, runoff }) => {
      sum += evaporation + transpiration + deepPercolation + runoff;
    });
  }
  return sum;
}

/** The kernel must give what the chain gives before its speed means anything. */
function compare(zones) {
  const days = kernelDays(DAYS);
  let worst = 0;
  for (const zone of zones.slice(0, CHAINED)) {
    runDualBalance(zone.water, canopySeries(zone.plants, climate), zone.kernelled, days);
    chain(zone, (state, day) => {
      for (const name of Object.keys(days)) worst = Math.max(worst, Math.abs(days[name][day] - state[name]));
    });
  }
  if (!(worst <= SAME)) throw new Error(`kernel and chain differ by ${worst} mm`);
  return worst;
}

const ZONE_FIELDS = [
  'totalEvaporableWater',
  'readilyEvaporableWater',
  'availableWater',
  'tableFraction',
  'mulchFactor',
  'retention',
  'capillaryRise',
  'surfaceDepletion',
  'depletion',
  'wettedFraction',
];

/** Everything that the C program reads, in the order in which it reads it. */
function input(zones) {
  const canopies = plantings.map((plants) => canopySeries(plants, climate));
  return Float64Array.from([
    ZONES,
    DAYS,
    ...waters.flatMap((water) => [...water.eto, ...water.rain, ...water.irrigation, ...water.irrigatedFraction]),
    ...canopies.flatMap((each) => [...each.basalCoefficient, ...each.maximumCoefficient, ...each.canopyCover, ...each.rootDepth]),
    ...zones.flatMap(({ kernelled, planting, watering }) => [...ZONE_FIELDS.map((name) => kernelled[name]), planting, watering]),
  ]);
}

function inC(zones) {
  const program = compileC(readFileSync(path.join(import.meta.dirname, 'baselines/dual-balance.c'), 'utf8'));
  if (program === null) return null;
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-dual-'));
  try {
    const file = path.join(folder, 'zones.bin');
    writeFileSync(file, input(zones));
    return runC(program, [file, RUNS]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function bench() {
  const zones = Array.from({ length: ZONES }, (_, at) => zoneOf(at)).map((each) => ({
    ...each,
    kernelled: kernelZone(each.zone, each.start),
  }));
  const worst = compare(zones);
  const sum = kernel(zones, true);
  const c = inC(zones);
  if (c && !(Math.abs(c.sum / sum - 1) <= SAME)) throw new Error(`the sums differ: ${sum} mm here, ${c.sum} mm in C`);
  const took = await medians(
    { shared: () => kernel(zones, true), own: () => kernel(zones, false), objects: () => objects(zones) },
    { warmUps: 3, runs: RUNS },
  );
  const perDay = { shared: took.shared / ZONES, own: took.own / ZONES, objects: took.objects / CHAINED, c: c ? c.ms / ZONES : Number.NaN };
  const perSecond = (name) => `${(DAYS / perDay[name] / 1000).toFixed(perDay[name] > 1 ? 2 : 1)} M zone-days/s`;
  return [
    `the kernel ${perSecond('shared')} with a canopy for each kind of planting, ${perSecond('own')} with one for each zone; objects ${perSecond('objects')}`,
    `ratio: the kernel is ${ratio(perDay.objects / perDay.shared)} as fast as objects (${ratio(perDay.objects / perDay.own)} with a canopy each), at most ${worst.toExponential(1)} mm apart`,
    c
      ? `ratio: C takes ${ratio(perDay.c / perDay.shared)} the kernel's time (${perSecond('c')}), for the same ${count(sum)} mm`
      : NO_COMPILER,
  ];
}
