// Over- and under-programmed against the fleet's own reference, P - N by zone, and the floor that the measurement itself sets.

/** A side of the settings gap should be found when it is at least this share of need, and is not there below the smaller one. */
const CLEAR = 0.25;
const NONE = 0.05;
/** The organization is told of nothing smaller. [gal] */
const LEAST_GALLONS = 2000;
/** Months that need less than this share of the usual one say little. */
const LEAST_MONTH = 0.2;

const SIDES = { 'over-programmed': 'over_gal', 'under-programmed': 'under_gal' };

const numbers = (row) => ({
  ...row,
  needed: Number(row.needed_gal),
  usual: Number(row.usual_month_gal),
  isKnown: row.programmed_gal !== '',
});
const covers = (finding, row) =>
  finding.property === row.property && finding.from.slice(0, 7) <= row.month && finding.until.slice(0, 7) >= row.month;

function side(kind, rows, findings) {
  const own = findings.filter((one) => one.kind === kind && one.from && one.until);
  if (!own.length) return { clear: 0, found: 0, opened: 0, without: 0 };
  const first = own.map(({ from }) => from.slice(0, 7)).sort()[0];
  const size = (row) => Number(row[SIDES[kind]]);
  const isClear = (row) =>
    row.isKnown && row.month >= first && size(row) >= Math.max(LEAST_GALLONS, CLEAR * Math.max(row.needed, LEAST_MONTH * row.usual));
  const clear = rows.filter(isClear);
  const found = clear.filter((row) => own.some((one) => covers(one, row))).length;
  const isBacked = (one) =>
    rows.some((row) => row.isKnown && covers(one, row) && size(row) > NONE * Math.max(row.needed, LEAST_MONTH * row.usual));
  return { clear: clear.length, found, opened: own.length, without: own.filter((one) => !isBacked(one)).length };
}

/** For each side: property-months in which the reference is clear, how many were found; findings opened, and those without any such gap. */
export function settingsGaps(gaps, findings) {
  const rows = gaps.map(numbers);
  return Object.fromEntries(Object.keys(SIDES).map((kind) => [kind, side(kind, rows, findings)]));
}

/** The normal distribution up to z, and its inverse by halving (Abramowitz and Stegun 26.2.17, error below 7.5e-8). */
function normal(z) {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const sum = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
  return z >= 0 ? 1 - tail : tail;
}
function deviate(probability) {
  let [low, high] = [-8, 8];
  for (let at = 0; at < 60; at += 1) {
    const middle = (low + high) / 2;
    if (normal(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What one property's monthly volumes are known to: scatter of log M/P, the dial's steps, and how much each month is of the usual one. */
function noiseOf(rows, stepGallons) {
  const watered = rows.filter((row) => Number(row.programmed_gal) >= LEAST_MONTH * row.usual && Number(row.through_meters_gal) > 0);
  if (watered.length < FEWEST_MONTHS) return null;
  const logs = watered.map((row) => Math.log(Number(row.through_meters_gal) / Number(row.programmed_gal)));
  const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length;
  const sd = Math.sqrt(logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (logs.length - 1));
  const [{ usual }] = rows;
  return {
    sd,
    months: logs.length,
    step: (stepGallons * Math.sqrt(2 / 12)) / usual,
    loads: rows.map((row) => Number(row.programmed_gal) / usual),
  };
}

/** Properties whose settings are known and on which nothing was wrong that would widen the scatter. */
function noisesOf(gaps, noisy, steps) {
  const byProperty = new Map();
  for (const row of gaps.map(numbers)) {
    if (row.isKnown && !noisy.has(row.property)) byProperty.set(row.property, [...(byProperty.get(row.property) ?? []), row]);
  }
  return [...byProperty].map(([property, rows]) => noiseOf(rows, steps.get(property) ?? 0)).filter((noise) => noise !== null);
}

const FEWEST_MONTHS = 4;
/** A fault may begin anywhere between two readings. */
const PHASES = [0.1, 0.3, 0.5, 0.7, 0.9];
const READINGS_A_YEAR = 12;
/** Nothing is known better than this share of the usual month: meters, clocks and people are not. */
const FINEST = 1e-3;

/**
 * What a matched filter that knows the noise reaches on monthly readings: the fault shows in a part of the first interval and in all of the
 * second, each known to its month's load times sd (1 + 1/history), and to the steps of the dial; it is heard above the level that so many false
 * alarms a site-year allow. The mean over properties, months and where between two readings it began.
 *
 * @param {number} share of the usual month
 * @param {number} alarms false alarms a site-year, of one test a reading
 */
function idealRecall(share, alarms, noises) {
  const level = -deviate(alarms / READINGS_A_YEAR);
  let [sum, tries] = [0, 0];
  for (const { sd, months, step, loads } of noises) {
    const variance = loads.map((load) => FINEST ** 2 + step ** 2 + (load * sd) ** 2 * (1 + 1 / months));
    for (let at = 1; at < loads.length; at += 1) {
      for (const phase of PHASES) {
        sum += normal(share * Math.sqrt(phase ** 2 / variance[at - 1] + 1 / variance[at]) - level);
        tries += 1;
      }
    }
  }
  return sum / tries;
}

const SHARES = [0.02, 0.03, 0.05, 0.07, 0.1, 0.15, 0.25];
/** From a tenth of the usual month to three of it, every tenfold as likely. */
const TENTH_AND_MORE = Array.from({ length: 16 }, (_, index) => 0.1 * 30 ** ((index + 0.5) / 16));
const ALARMS_A_YEAR = [0.01, 0.03, 0.1, 0.3, 1];
const FEWEST_PROPERTIES = 5;

/**
 * The floor: recall of the ideal detector by size and false alarms; null where fewer than five properties can tell their noise.
 *
 * @param gaps records of gaps.csv
 * @param {Set<string>} noisy properties that do not tell the noise
 * @param {Map<string, number>} steps gallons of one step of a property's dials
 */
export function floorOf(gaps, noisy, steps) {
  const noises = noisesOf(gaps, noisy, steps);
  if (noises.length < FEWEST_PROPERTIES) return null;
  const sds = noises.map(({ sd }) => sd).sort((one, other) => one - other);
  const at = (share) => sds[Math.floor(share * (sds.length - 1))];
  const curve = SHARES.map((share) => ({ share, recall: ALARMS_A_YEAR.map((alarms) => idealRecall(share, alarms, noises)) }));
  const mean = (alarms) => TENTH_AND_MORE.reduce((sum, share) => sum + idealRecall(share, alarms, noises), 0) / TENTH_AND_MORE.length;
  const fromTenth = ALARMS_A_YEAR.map(mean);
  return { fromTenth, properties: noises.length, medianSd: at(0.5), sd90: at(0.9), falseAlarms: ALARMS_A_YEAR, curve };
}
