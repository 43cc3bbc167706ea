// A fleet of properties whose true saving is known: do the bands of the savings method cover it as often as they say, and are they narrow?
import { avoidedUse } from '../../libs/metering/dist/savings/avoided-use.js';
import { fitNeedBaseline } from '../../libs/metering/dist/savings/need-baseline.js';

const SITES = 6000;
const SEED = 20_261_130;
const CONFIDENCE = 0.9;
const Z = 1.644_853_627;
const SEASON = [0.1, 0.15, 0.35, 0.6, 0.9, 1.1, 1.2, 1.1, 0.8, 0.45, 0.18, 0.08];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** The fleet: what properties take for each day and each litre needed, and how far they differ. */
const FLEET = { perDay: 0.08, perDaySd: 0.05, perNeed: 1.2, perNeedSd: 0.25 };

/** @param {readonly number[]} values */
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function randomOf(seed) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal, one: (list) => list[Math.floor(uniform() * list.length)] };
}

/** One property: months before, months after with a saving that is known, and everything that the fleet's own model may know of it. */
function aSite({ uniform, normal, one }) {
  const before = one([12, 18, 24, 36]);
  const after = one([1, 3, 12]);
  const gap = one([0, 0, 1]);
  const begin = Math.floor(uniform() * 12);
  const scale = 100_000 * Math.exp(0.8 * normal());
  const perDay = Math.max(0, FLEET.perDay + FLEET.perDaySd * normal()) * (scale / 30.4);
  const perNeed = Math.max(0.5, FLEET.perNeed + FLEET.perNeedSd * normal());
  const noise = 0.12 * Math.exp(0.4 * normal());
  const steady = 0.1 + 0.6 * uniform();
  const correlation = Math.min(0.6, Math.max(-0.1, 0.25 + 0.2 * normal()));
  const savedShare = 0.4 * uniform();
  let last = normal();
  const months = Array.from({ length: before + gap + after }, (_, at) => {
    const place = (begin + at) % 12;
    const neededLitres = scale * Math.max(0.02, SEASON[place] * (1 + 0.15 * normal()));
    const days = DAYS[place];
    const usual = perDay * days + perNeed * neededLitres;
    last = at === 0 ? last : correlation * last + Math.sqrt(1 - correlation ** 2) * normal();
    const sd = noise * (steady * scale + (1 - steady) * usual);
    const without = usual + sd * last;
    const saved = at < before + gap ? 0 : savedShare * usual;
    const year = 2023 + Math.floor((begin + at) / 12);
    return { month: `${year}-${String(place + 1).padStart(2, '0')}`, days, neededLitres, sd, saved, meteredLitres: without - saved };
  });
  return { before: months.slice(0, before), after: months.slice(before + gap), gap, scale, correlation };
}

/** Half-width of a model that knows this property's noise and its correlation, and the fleet from which its line was drawn. */
function knowingHalfWidth({ before, after, gap, scale, correlation }) {
  const all = [...before, ...after];
  const place = (at) => (at < before.length ? at : at + gap);
  const covariance = (i, j) =>
    all[i].sd * all[j].sd * correlation ** Math.abs(place(i) - place(j)) +
    (FLEET.perDaySd * (scale / 30.4)) ** 2 * all[i].days * all[j].days +
    FLEET.perNeedSd ** 2 * all[i].neededLitres * all[j].neededLitres;
  const known = before.map((_, at) => at);
  const asked = after.map((_, at) => before.length + at);
  const matrix = known.map((i) => known.map((j) => covariance(i, j)));
  const shared = known.map((i) => asked.reduce((sum, j) => sum + covariance(i, j), 0));
  const total = asked.reduce((sum, i) => sum + asked.reduce((inner, j) => inner + covariance(i, j), 0), 0);
  const solved = solve(matrix, shared);
  return Z * Math.sqrt(total - shared.reduce((sum, value, at) => sum + value * solved[at], 0));
}

function solve(matrix, right) {
  const rows = matrix.map((row, at) => [...row, right[at]]);
  const size = rows.length;
  for (let pivot = 0; pivot < size; pivot += 1)
    for (let row = pivot + 1; row < size; row += 1) {
      const factor = rows[row][pivot] / rows[pivot][pivot];
      for (let column = pivot; column <= size; column += 1) rows[row][column] -= factor * rows[pivot][column];
    }
  const found = new Array(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    const rest = found.reduce((sum, value, column) => (column > row ? sum + rows[row][column] * value : sum), 0);
    found[row] = (rows[row][size] - rest) / rows[row][row];
  }
  return found;
}

/** Runs the fleet and judges it; throws with the figures when a bound is broken. */
export function prove() {
  const random = randomOf(SEED);
  const cases = Array.from({ length: SITES }, () => {
    const site = aSite(random);
    const said = avoidedUse(fitNeedBaseline(site.before), site.after, CONFIDENCE);
    const truth = site.after.reduce((sum, { saved }) => sum + saved, 0);
    const covered = Math.abs(said.litres - truth) <= said.halfWidthLitres;
    return {
      covered,
      length: site.after.length,
      width: said.halfWidthLitres / knowingHalfWidth(site),
      bias: (said.litres - truth) / site.scale,
    };
  });
  const lines = [null, 1, 3, 12].map((length) => {
    const chosen = cases.filter((each) => length === null || each.length === length);
    const coverage = chosen.filter(({ covered }) => covered).length / chosen.length;
    const width = median(chosen.map((each) => each.width));
    const says = `${length === null ? 'all lengths' : `${length} months`}: ${chosen.length} properties, the 90 % bands cover ${(100 * coverage).toFixed(1)} %, half-width ${width.toFixed(2)} of a model that knows the fleet`;
    if (!(coverage >= 0.86 && coverage <= 0.94)) throw new Error(`${says}; 86 to 94 % was promised`);
    if (!(width <= 1.3)) throw new Error(`${says}; at most 1.3 was promised`);
    return says;
  });
  const bias = cases.reduce((sum, each) => sum + each.bias, 0) / cases.length;
  return [`seed ${SEED}`, ...lines, `mean miss ${(100 * bias).toFixed(2)} % of a usual summer month`].join('\n');
}
