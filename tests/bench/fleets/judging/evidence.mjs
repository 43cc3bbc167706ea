// What a company could know of each meter of a drawn fleet, in the form in which the libraries judge it. It comes from the rows of the import
// folder wherever the folder has them; runs and need come from the generator, which computes them as the product does.
import { dateText, dayAt, startOfDay } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { GALLONS } from '../world/property.mjs';
import { registerText } from '../world/registers.mjs';
import { isFallBack, isSpringForward } from '../world/water.mjs';

const LITRES_PER_GALLON = 3.785411784;
const MM_PER_INCH = 25.4;
const CHANGE_AT = 120;
const RELATIVE_SD = { measured: 0.05, derived: 0.2 };
const DAY = 1440;

/** The elapsed minute at which each local day begins, one more than there are days. */
function midnightsOf(fleet, timeZone) {
  const midnights = new Float64Array(fleet.last - fleet.from + 2);
  midnights[0] = startOfDay(fleet.from);
  for (let day = fleet.from; day <= fleet.last; day += 1) {
    const moved = isSpringForward(day, timeZone) ? -60 : isFallBack(day, timeZone) ? 60 : 0;
    midnights[day - fleet.from + 1] = midnights[day - fleet.from] + DAY + moved;
  }
  return midnights;
}

const wallMinute = (text) => Date.parse(`${text.slice(0, 16)}Z`) / 60_000;

/** Elapsed minute of a wall-clock minute; of an hour that comes twice the first, unless an offset says the second. */
function elapsed({ midnights, fleet }, minute, isSecond = false) {
  const day = Math.min(fleet.last, Math.max(fleet.from, dayAt(minute)));
  const at = day - fleet.from;
  const clock = minute - startOfDay(day);
  const moved = midnights[at + 1] - midnights[at] - DAY;
  return midnights[at] + clock + (clock >= CHANGE_AT || isSecond ? moved : 0);
}

/** Local day number with its elapsed share. */
function localDay(place, minute) {
  const day = dayAt(minute);
  const at = day - place.fleet.from;
  const { midnights } = place;
  if (!(at >= 0 && at + 1 < midnights.length)) return minute / DAY;
  return day + (elapsed(place, minute) - midnights[at]) / (midnights[at + 1] - midnights[at]);
}

function runsOf(place, meter) {
  const { property } = place;
  if (property.setting !== 'known') return [];
  return property.controllers
    .flatMap((controller) => controller.runs)
    .filter(({ zone, start }) => zone.meter === meter.name && dayAt(start) <= place.fleet.last)
    .map(({ zone, start, minutes }) => ({ zoneId: zone.name, program: 'A', begin: elapsed(place, start), minutes }))
    .map(({ minutes, ...run }) => ({ ...run, end: run.begin + minutes }))
    .sort((one, other) => one.begin - other.begin);
}

const litresPerUnit = (unit) => GALLONS[unit] * LITRES_PER_GALLON;

function usageOf(place, meter, rows) {
  if (!rows.length) return null;
  const { midnights } = place;
  const stepMinutes = Number(rows[0].step ?? 60);
  const litres = new Float64Array((midnights.at(-1) - midnights[0]) / stepMinutes).fill(Number.NaN);
  for (const row of rows) {
    const isSecond = /-0[5-8]:00$/.test(row.start) && isWinter(row.start);
    const step = (elapsed(place, wallMinute(row.start), isSecond) - midnights[0]) / stepMinutes;
    if (Number.isInteger(step) && step >= 0 && step < litres.length) litres[step] = Number(row.volume) * litresPerUnit(row.unit);
  }
  const resolutionLitres = meter.multiplier * meter.resolution * litresPerUnit(meter.unit);
  return { firstMinute: midnights[0], stepMinutes, litres, resolutionLitres };
}

const WINTER = { 'America/Los_Angeles': '-08:00', 'America/Chicago': '-06:00' };
const isWinter = (text) => Object.values(WINTER).includes(text.slice(-6)) && text.slice(-6) !== '-07:00';

/** Intervals of bills: an included end is the next midnight. */
function billsOf(place, rows) {
  return rows.map((row) => ({
    fromLocalDay: localDay(place, wallMinute(`${row.start}T00:00`)),
    toLocalDay: localDay(place, wallMinute(`${row.end}T00:00`)) + (row.end_included === 'yes' ? 1 : 0),
    litres: Number(row.volume) * litresPerUnit(row.unit),
    sdLitres: litresPerUnit(row.unit) * Math.sqrt(1 / 6),
    source: 'bills',
  }));
}

const seriesOf = (place, meter, rows) => ({
  meterId: meter.name,
  digits: meter.digits,
  litresPerRegisterUnit: meter.multiplier * litresPerUnit(meter.unit),
  readings: rows.map((row) => ({ localDay: localDay(place, wallMinute(row.read_at)), register: Number(row.register) })),
});

/** What people say that they water by hand from the meter. */
function handLitresPerDay({ property }, meter) {
  const byHand = property.hand?.metered && meter.name === property.meters.findLast((one) => !one.removed).name ? property.hand.gallons : 0;
  return (byHand * LITRES_PER_GALLON) / 7;
}

const relativeSd = (zone) => (zone.byRate ? RELATIVE_SD.derived : RELATIVE_SD.measured);

function dailyOf(place, meter, runs) {
  const { property, fleet, midnights } = place;
  const days = fleet.last - fleet.from + 1;
  const zones = property.zones.filter((zone) => zone.meter === meter.name);
  const needed = new Float64Array(days);
  for (const zone of zones) for (let at = 0; at < days; at += 1) needed[at] += (zone.need.get(fleet.from + at) ?? 0) * LITRES_PER_GALLON;
  if (property.setting === 'unknown') return { zones, needed, programmed: new Float64Array(days).fill(Number.NaN), estimate: 0 };
  if (property.setting === 'weather') return { zones, needed, programmed: Float64Array.from(needed), estimate: 1 };
  const flows = new Map(zones.map((zone) => [zone.name, zone.flowGpm * LITRES_PER_GALLON]));
  const programmed = new Float64Array(days);
  let day = 0;
  for (const { zoneId, begin, end } of runs) {
    while (day < days - 1 && begin >= midnights[day + 1]) day += 1;
    programmed[day] += flows.get(zoneId) * (end - begin);
  }
  return { zones, needed, programmed, estimate: 0 };
}

function weatherOf({ property, fleet }) {
  const byDay = new Map(property.station.days.map((one) => [one.day, one]));
  const of = (name) =>
    Float64Array.from({ length: fleet.last - fleet.from + 1 }, (_, at) => byDay.get(fleet.from + at)?.[name] ?? Number.NaN);
  return { rainMm: of('rain'), etoMm: of('eto') };
}

function meterEvidence(place, meter, tables) {
  const { property, fleet, midnights } = place;
  const own = (rows) => rows.filter((row) => row.meter === meter.name);
  const runs = runsOf(place, meter);
  const { zones, needed, programmed, estimate } = dailyOf(place, meter, runs);
  const days = fleet.last - fleet.from + 1;
  const total = zones.reduce((sum, zone) => sum + zone.flowGpm, 0);
  const systematic = zones.reduce((sum, zone) => sum + zone.flowGpm * relativeSd(zone), 0) / (total || 1);
  const evidence = {
    meterId: `${property.name}/${meter.name}`,
    kind: meter.kind,
    indoorLitresPerDay: property.indoor?.stated ? property.indoor.gallons * LITRES_PER_GALLON : null,
    sizeMm: meter.sizeIn * MM_PER_INCH,
    resolutionLitres: meter.multiplier * meter.resolution * litresPerUnit(meter.unit),
    firstDay: fleet.from,
    days,
    midnights,
    ...weatherOf(place),
    programmedLitres: programmed,
    programmedIsEstimate: new Uint8Array(days).fill(estimate),
    handLitresPerDay: handLitresPerDay(place, meter),
    neededLitres: needed,
    programmedRelativeSd: systematic || RELATIVE_SD.measured,
    zones: zones.map((zone) => ({
      ...{ zoneId: zone.name, controllerId: zone.controller.name, station: zone.stationNumber },
      ...{ flowLPerMin: zone.flowGpm * LITRES_PER_GALLON, flowRelativeSd: relativeSd(zone) },
    })),
    runs,
    intervals: billsOf(place, own(tables.bills)),
    usage: usageOf(place, meter, own(tables.usage)),
    pricePerLitre: meter.unit === 'CCF' ? 4.2 / litresPerUnit('CCF') : null,
  };
  return { property: property.name, meter: meter.name, evidence, series: seriesOf(place, meter, own(tables.readings)) };
}

/** A meter that was changed lives on in the one that took its place: its zones are that one's, its volumes come before that one's. */
function inOneLife(meters) {
  return meters.flatMap(({ removed, ...one }, at) => {
    if (removed) return [];
    const before = meters[at - 1];
    return [before?.removed ? { ...one, earlier: before.series, swapAt: before.removed } : one];
  });
}

/**
 * @param fleet drawn, its texts made
 * @param {Record<string, Record<string, string>[]>} tables records of readings, usage and bills
 * @returns {{property: string, meter: string, evidence: object, series: object}[]} each meter that stands, in the order of meters.csv; `earlier`
 *   is the series of the one before it, `swapAt` its last register and the day
 */
export function evidenceOf(fleet, tables) {
  const byProperty = (rows) => {
    const groups = new Map();
    for (const row of rows) groups.get(row.property)?.push(row) ?? groups.set(row.property, [row]);
    return groups;
  };
  const grouped = Object.fromEntries(['readings', 'usage', 'bills'].map((name) => [name, byProperty(tables[name])]));
  return fleet.properties.flatMap((property) => {
    const place = { property, fleet, midnights: midnightsOf(fleet, property.station.timeZone) };
    const own = Object.fromEntries(Object.entries(grouped).map(([name, rows]) => [name, rows.get(property.name) ?? []]));
    const meters = property.meters.map((meter) => ({
      ...meterEvidence(place, meter, own),
      removed: meter.removed
        ? { localDay: meter.removed, last: Number(registerText(meter, startOfDay(meter.removed), fleet)), first: 0 }
        : null,
    }));
    return inOneLife(meters);
  });
}

export const instantOf = (midnights, firstDay, day) => {
  const at = Math.min(midnights.length - 2, Math.max(0, Math.floor(day) - firstDay));
  const share = day - Math.floor(day);
  return `${dateText(Math.floor(day))}T${clock(Math.round(share * (midnights[at + 1] - midnights[at])))}`;
};

const clock = (minutes) =>
  [Math.floor(minutes / 60) % 24, Math.floor(minutes % 60)].map((value) => String(value).padStart(2, '0')).join(':');
