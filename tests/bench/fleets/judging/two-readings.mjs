// How many of the faults that add water could be found by readings within two of them at all: by an observer who knows each fault's own water from the
// same fleet without faults, the zones' true flows, and how much register, runs and pressure scatter, and who may be wrong 0.1 times a site-year.
import { choleskyOf, solveByCholesky } from '../../../../libs/metering/dist/statistics/cholesky.kernel.js';
import { records } from '../scoring/csv.mjs';
import { matched } from '../scoring/match.mjs';
import { sitesOf, spanOf } from '../scoring/sites.mjs';
import { monthlyIntervals } from './judged.mjs';

const LITRES_PER_GALLON = 3.785411784;
const DAY = 1440;
const DAY_MS = 86_400_000;
const LEAST = 0.1;
/** A chance of 0.1 in a year of 12.5 readings: 0.008 by the reading, which a normal quantity passes at this many standard deviations. */
const LIMIT = 2.41;
/** As the fleets are drawn (`world`): each run scatters by itself, pressure from day to day. */
const RUN_SD = 0.012;
const PRESSURE_OF_NEXT_DAY = 0.94;
/** A reading is the same in both fleets when it was taken within so much. [d] */
const SAME = 0.6;

/** Abramowitz and Stegun (1964), 26.2.17. */
function probabilityBelow(score) {
  const t = 1 / (1 + 0.2316419 * Math.abs(score));
  const tail = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const beyond = (Math.exp(-(score ** 2) / 2) / Math.sqrt(2 * Math.PI)) * tail;
  return score > 0 ? 1 - beyond : beyond;
}

/** Litres of each day of an interval by the true flows, and the sum of the squares of its runs. */
function trueWater({ firstDay, midnights, runs }, flows, { fromLocalDay, toLocalDay }) {
  const first = Math.floor(fromLocalDay);
  const litres = new Float64Array(Math.ceil(toLocalDay) - first);
  let squares = 0;
  for (const { begin, end, zoneId } of runs) {
    const at = firstDay + Math.floor((begin - midnights[0]) / DAY) - first;
    if (at < 0 || at >= litres.length) continue;
    const own = (end - begin) * (flows.get(zoneId) ?? 0);
    litres[at] += own;
    squares += own ** 2;
  }
  return { first, litres, squares };
}

const together = (one, other) =>
  one.litres.reduce(
    (sum, litres, at) =>
      litres === 0
        ? sum
        : sum +
          litres *
            other.litres.reduce((own, more, day) => own + more * PRESSURE_OF_NEXT_DAY ** Math.abs(one.first + at - other.first - day), 0),
    0,
  );

/** Covariance of the intervals: pressure, runs, register. */
function noiseOf(evidence, property, intervals) {
  const flows = new Map(property.zones.map((zone) => [zone.name, zone.trueFlow * LITRES_PER_GALLON]));
  const water = intervals.map((interval) => trueWater(evidence, flows, interval));
  const n = intervals.length;
  const register = evidence.resolutionLitres ** 2;
  return Float64Array.from({ length: n * n }, (_, place) => {
    const [row, column] = [Math.floor(place / n), place % n];
    const pressure = property.pressureNoise ** 2 * together(water[row], water[column]);
    if (row === column) return pressure + RUN_SD ** 2 * water[row].squares + register / 6 + 1;
    return pressure - (Math.abs(row - column) === 1 ? register / 12 : 0);
  });
}

/** How many standard deviations the water of a fault is in the readings until it is due: √(sᵀ S⁻¹ s). */
function deviations(meter, healthy, fault, property) {
  const [from, due] = [fault.from / DAY_MS, fault.due / DAY_MS];
  const same = (one) => (other) =>
    Math.max(Math.abs(one.fromLocalDay - other.fromLocalDay), Math.abs(one.toLocalDay - other.toLocalDay)) < SAME;
  const without = monthlyIntervals(healthy);
  const pairs = monthlyIntervals(meter)
    .filter(({ toLocalDay }) => toLocalDay > from && toLocalDay <= due + 1)
    .flatMap((interval) => without.filter(same(interval)).map((other) => ({ interval, own: interval.litres - other.litres })));
  const own = Float64Array.from(pairs, (pair) => pair.own);
  if (!(own.reduce((sum, litres) => sum + litres, 0) > 0)) return 0;
  const spread = noiseOf(
    meter.evidence,
    property,
    pairs.map(({ interval }) => interval),
  ); // prettier-ignore
  const solved = solveByCholesky(choleskyOf(spread, own.length, Int32Array.from(own.keys())), own);
  return Math.sqrt(own.reduce((sum, litres, at) => sum + litres * solved[at], 0));
}

/**
 * @param drawn fleet, its texts and the evidence of its meters
 * @param healthy evidence of the meters of the same fleet without faults
 * @returns {{judged: number, possible: number}} faults of irrigation meters that are read and whose settings are known, of a tenth of the usual
 *   month at least, and how many of them are expected to be found
 */
export function possibleInTwoReadings({ fleet, texts, meters }, healthy) {
  const tables = Object.fromEntries(
    ['properties', 'meters', 'readings', 'usage', 'bills', 'settings'].map((name) => [name, records(texts.files[`${name}.csv`] ?? '')]),
  );
  const sites = sitesOf(tables);
  const { faults } = matched({ truth: records(texts.truth), findings: [], sites, last: spanOf(sites).last, history: true });
  const judged = faults.filter(
    ({ isJudged, isUnseen, family, share, site }) =>
      isJudged && !isUnseen && family.excess && Math.abs(share) >= LEAST && site.group === 'monthly',
  );
  const twins = new Map(healthy.map((meter) => [meter.evidence.meterId, meter]));
  const chances = judged.map((fault) => {
    const property = fleet.properties.find(({ name }) => name === fault.property);
    const own = meters.filter((meter) => meter.property === fault.property);
    const most = Math.max(0, ...own.map((meter) => deviations(meter, twins.get(meter.evidence.meterId), fault, property)));
    return probabilityBelow(most - LIMIT);
  });
  return { judged: judged.length, possible: chances.reduce((sum, chance) => sum + chance, 0) };
}
