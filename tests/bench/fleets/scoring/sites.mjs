// What a fleet's import folder says of its properties, as far as scoring needs it: how they are metered, and when they were read.

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
/** A property has an hourly feed when so many spans of at most an hour came in: less is a trial. */
const FEWEST_HOURS = 14 * 24;

/** Local wall-clock time as milliseconds, whatever offset stands behind it. */
export const wallMs = (text) => Date.parse(`${text.length === 10 ? `${text}T00:00` : text.slice(0, 16)}Z`);

const RESOLUTION_GALLONS = { CCF: 748.0519, HCF: 748.0519, kgal: 1000, gal: 1, ft3: 7.480519, m3: 264.172052, L: 0.264172052 };
/** Smallest flow that a meter of a size [in] must register nearly all of [gpm]. */
const MINIMUM_TEST_FLOW = [
  [0.625, 0.25],
  [0.75, 0.5],
  [1, 0.75],
  [1.5, 1.5],
  [2, 2],
  [3, 4],
  [4, 7],
  [6, 12],
]; // prettier-ignore
const LEAST_STEADY_GPM = 0.15;
const STEPS_AN_HOUR = 2;

/** Gallons of one step of a meter's dial. */
const stepGallons = ({ unit, multiplier, resolution }) =>
  Number(resolution || 0) * Number(multiplier || 1) * (RESOLUTION_GALLONS[unit] ?? 1);

/** One step of all dials of a property together, as independent errors add. */
export const stepsOf = ({ meters }) => Math.hypot(...meters.filter((meter) => !meter.removed_on).map(stepGallons));

/** Smallest flow that a meter must register nearly all of; 0 where its size is not told. [gpm] */
export const minimumTestFlow = (meter) => MINIMUM_TEST_FLOW.findLast(([size]) => Number(meter.size_in || 0) >= size)?.[1] ?? 0;

/** Below this flow a steady leak cannot be seen by a meter. [gpm] */
export const steadyFloor = (meter) => Math.max(LEAST_STEADY_GPM, minimumTestFlow(meter), (stepGallons(meter) * STEPS_AN_HOUR) / 60);

const empty = () => ({ meters: [], readAt: new Set(), hours: 0, fedFrom: Number.POSITIVE_INFINITY, isMixed: false, isKnown: true });

function addUsage(site, row) {
  const [start, end] = [wallMs(row.start), wallMs(row.end)];
  if (end - start <= HOUR_MS) {
    site.hours += 1;
    site.fedFrom = Math.min(site.fedFrom, start);
  } else site.readAt.add(end);
  site.last = Math.max(site.last ?? 0, end);
}

function addBill(site, row) {
  site.readAt.add(wallMs(row.end) + (row.end_included === 'yes' ? DAY_MS : 0));
}

/** Two meters that are read on one visit are read once. */
const oncePerDay = (instants) =>
  instants.filter((at, index) => index === 0 || Math.floor(at / DAY_MS) > Math.floor(instants[index - 1] / DAY_MS));

/**
 * @param {Record<string, Record<string, string>[]>} tables records of meters, readings, usage, bills, settings by file name
 * @returns by property: `group` (monthly, hourly, mixed, settings unknown), `readings` in order, its meters
 */
export function sitesOf({ properties, meters = [], readings = [], usage = [], bills = [], settings = [] }) {
  const sites = new Map(properties.map(({ property }) => [property, empty()]));
  const each = (rows, add) => rows.forEach((row) => sites.has(row.property) && add(sites.get(row.property), row));
  each(meters, (site, row) => {
    site.meters.push(row);
    if (row.kind === 'mixed') site.isMixed = true;
  });
  each(readings, (site, row) => site.readAt.add(wallMs(row.read_at)));
  each(usage, addUsage);
  each(bills, addBill);
  each(settings, (site, row) => {
    if (row.state === 'unknown' || row.state === 'weather') site.isKnown = false;
  });
  for (const site of sites.values()) {
    site.isHourly = site.hours >= FEWEST_HOURS;
    site.readings = oncePerDay([...site.readAt].sort((one, other) => one - other));
    site.group = !site.isKnown ? 'settings unknown' : site.isMixed ? 'mixed' : site.isHourly ? 'hourly' : 'monthly';
  }
  return sites;
}

/** The whole fleet's first and last instant. */
export function spanOf(sites) {
  let [first, last] = [Number.POSITIVE_INFINITY, 0];
  for (const { readings, last: fed = 0 } of sites.values()) {
    first = Math.min(first, readings[0] ?? first);
    last = Math.max(last, readings.at(-1) ?? 0, fed);
  }
  return { first, last, years: (last - first) / DAY_MS / 365.25 };
}
