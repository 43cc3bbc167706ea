// How many of the faults that add water could be found by the hour within two days at all: by an observer who knows each fault's own water from the
// same fleet without faults, the zones' true flows, and how much register, runs and pressure scatter. One fault, one look: no product can do better.
import { records } from '../scoring/csv.mjs';
import { matched } from '../scoring/match.mjs';
import { sitesOf, spanOf } from '../scoring/sites.mjs';
import { choleskyOf, solveByCholesky } from '../../../../libs/metering/dist/statistics/cholesky.kernel.js';

const LITRES_PER_GALLON = 3.785411784;
const MINUTES = 2 * 1440;
const DAY = 1440;
/** So many standard deviations, as the product asks of a change; a normal quantity passes them in one of 1.7 million looks. */
const SEEN = 5;
/** As the fleets are drawn (`world`): each run scatters by itself, pressure from day to day. */
const RUN_SD = 0.012;
const PRESSURE_OF_NEXT_DAY = 0.94;
const LEAST = 0.1;

/** Steps of the two days after a minute, with the fault's own litres. */
function ownWater(evidence, healthy, fromMinute) {
  const { firstMinute, stepMinutes, litres } = evidence.usage;
  const from = Math.max(0, Math.floor((fromMinute - firstMinute) / stepMinutes));
  const until = Math.min(litres.length, Math.floor((fromMinute + MINUTES - firstMinute) / stepMinutes));
  const own = litres.slice(from, Math.max(from, until)).map((value, at) => value - healthy.usage.litres[from + at]);
  return { from, own: own.map((value) => (Number.isNaN(value) ? 0 : value)) };
}

/** Litres of each run by step, from the first of some steps on. */
function runParts({ runs, usage, midnights }, flows, from, steps) {
  const { firstMinute, stepMinutes } = usage;
  const begin = firstMinute + from * stepMinutes;
  const near = runs.filter((run) => run.end > begin && run.begin < begin + steps * stepMinutes);
  return near.map((run) => {
    const litres = new Float64Array(steps);
    for (let step = 0; step < steps; step += 1) {
      const at = begin + step * stepMinutes;
      litres[step] = Math.max(0, Math.min(run.end, at + stepMinutes) - Math.max(run.begin, at)) * (flows.get(run.zoneId) ?? 0);
    }
    return { day: Math.floor((run.begin - midnights[0]) / DAY), litres };
  });
}

function addProduct(into, one, other, factor) {
  const n = one.length;
  for (let row = 0; row < n; row += 1)
    if (one[row] !== 0) for (let column = 0; column < n; column += 1) into[row * n + column] += factor * one[row] * other[column];
}

/** Covariance of the steps: register, runs, pressure. */
function noiseOf(evidence, property, from, steps) {
  const noise = new Float64Array(steps * steps);
  const resolution = evidence.usage.resolutionLitres;
  for (let step = 0; step < steps; step += 1) {
    noise[step * (steps + 1)] = resolution ** 2 / 6 + 0.01;
    if (step > 0) noise[step * steps + step - 1] = noise[(step - 1) * steps + step] = -(resolution ** 2) / 12;
  }
  const flows = new Map(property.zones.map((zone) => [zone.name, zone.trueFlow * LITRES_PER_GALLON]));
  const byDay = new Map();
  for (const { day, litres } of runParts(evidence, flows, from, steps)) {
    addProduct(noise, litres, litres, RUN_SD ** 2);
    const sum = byDay.get(day) ?? new Float64Array(steps);
    byDay.set(
      day,
      sum.map((value, step) => value + litres[step]),
    );
  }
  for (const [day, one] of byDay)
    for (const [later, other] of byDay)
      addProduct(noise, one, other, property.pressureNoise ** 2 * PRESSURE_OF_NEXT_DAY ** Math.abs(later - day));
  return noise;
}

/** How many standard deviations the water of a fault is within two days: √(sᵀ S⁻¹ s). */
function deviations(evidence, healthy, property, fromMinute) {
  const { from, own } = ownWater(evidence, healthy, fromMinute);
  if (!own.some((litres) => litres !== 0)) return 0;
  const all = Int32Array.from(own.keys());
  const solved = solveByCholesky(choleskyOf(noiseOf(evidence, property, from, own.length), own.length, all), own);
  return Math.sqrt(own.reduce((sum, litres, step) => sum + litres * solved[step], 0));
}

/**
 * @param fleet drawn, with its texts and the evidence of its meters
 * @param healthy evidence of the meters of the same fleet without faults
 * @returns {{judged: number, possible: number}} faults of irrigation meters whose settings are known, of a tenth of the usual month at least
 */
export function possibleInTwoDays({ fleet, texts, meters }, healthy) {
  const tables = Object.fromEntries(
    ['properties', 'meters', 'readings', 'usage', 'bills', 'settings'].map((name) => [name, records(texts.files[`${name}.csv`] ?? '')]),
  );
  const sites = sitesOf(tables);
  const { faults } = matched({ truth: records(texts.truth), findings: [], sites, last: spanOf(sites).last, history: true });
  const judged = faults.filter(
    ({ isJudged, isUnseen, family, share, site }) =>
      isJudged && !isUnseen && family.excess && Math.abs(share) >= LEAST && site.group === 'hourly',
  );
  const twins = new Map(healthy.map(({ evidence }) => [evidence.meterId, evidence]));
  const possible = judged.filter((fault) => {
    const property = fleet.properties.find(({ name }) => name === fault.property);
    const own = meters.filter((meter) => meter.property === fault.property && meter.evidence.usage);
    return own.some(({ evidence }) => deviations(evidence, twins.get(evidence.meterId), property, fault.from / 60_000) >= SEEN);
  });
  return { judged: judged.length, possible: possible.length };
}
