// What stands on a property: meters, controllers, zones with their true flows. Drawn once, before time begins.
import { needByDay } from '../../../../apps/api/demo/generator/ground/soil-balance.mjs';
import { readZone } from '../../../../apps/api/demo/generator/ground/zone.mjs';
import { dateText } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';

export const GALLONS = { CCF: 748.0519, HCF: 748.0519, kgal: 1000, gal: 1, ft3: 7.480519, m3: 264.172052 };
const SOILS = ['sandy loam', 'loam', 'loam', 'silt loam', 'clay loam', 'clay'];
/** Kinds of zone with the program that they are usually in, their weight and the range of their areas in square feet. */
const ZONES = [
  { kind: 'cool spray', group: 'lawn', weight: 4, area: [900, 4500] },
  { kind: 'cool rotor', group: 'lawn', weight: 4, area: [5000, 16_000] },
  { kind: 'warm rotor', group: 'lawn', weight: 2, area: [5000, 16_000] },
  { kind: 'warm nozzle', group: 'lawn', weight: 2, area: [2500, 9000] },
  { kind: 'shrubs spray', group: 'beds', weight: 2, area: [900, 4000] },
  { kind: 'groundcover nozzle', group: 'beds', weight: 2, area: [1500, 6000] },
  { kind: 'shrubs drip', group: 'drip', weight: 3, area: [1200, 6000] },
  { kind: 'perennials drip', group: 'drip', weight: 1, area: [500, 2500] },
  { kind: 'trees bubbler', group: 'drip', weight: 1, area: [400, 1800] },
];
/** unit, multiplier, resolution in register units, digits before the dot */
const DIALS = [
  ...[
    ['CCF', 1, 0.1, 5],
    ['CCF', 1, 1, 4],
    ['HCF', 1, 0.01, 5],
    ['gal', 1, 100, 7],
    ['gal', 1, 10, 7],
    ['gal', 1, 1, 7],
  ],
  ...[
    ['gal', 100, 1, 6],
    ['gal', 10, 1, 6],
    ['kgal', 1, 0.1, 5],
    ['ft3', 1, 1, 6],
    ['ft3', 10, 1, 5],
    ['m3', 1, 0.01, 5],
  ],
];
/** Four feeds in five tell steps of at most ten gallons. */
const FINE_FEEDS = 0.8;
const FINE_GALLONS = 10;
const isFine = ([unit, multiplier, resolution]) => GALLONS[unit] * multiplier * resolution <= FINE_GALLONS;
/** meter size [in] by the largest flow that it passes [gpm]: common practice */
const SIZES = [
  [0.625, 20],
  [0.75, 30],
  [1, 50],
  [1.5, 100],
  [2, 160],
  [3, 320],
  [4, 500],
  [6, 1000],
]; // prettier-ignore
const KINDS = [
  ['one meter', 0.6],
  ['mixed', 0.13],
  ['two meters', 0.1],
  ['part unmetered', 0.08],
  ['hand', 0.09],
];

export function weighted(dice, pairs) {
  let left = dice.uniform() * pairs.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [thing, weight] of pairs) {
    left -= weight;
    if (left <= 0) return thing;
  }
  return pairs.at(-1)[0];
}

/** How far the recorded flows of a property miss the true ones, all alike: most little, some always and much. */
function systematic(dice) {
  const share = dice.uniform();
  if (share < 0.68) return 1 + 0.02 * dice.normal();
  if (share < 0.84) return 1 + dice.pick([-1, 1]) * dice.between(0.03, 0.1);
  return 1 + dice.pick([-1, 1]) * dice.between(0.12, 0.25);
}

function drawZone(property, index, dice) {
  const drawn = weighted(
    dice,
    ZONES.map((zone) => [zone, zone.weight]),
  ); // prettier-ignore
  const area = Math.round((property.scale * dice.between(...drawn.area)) / 10) * 10;
  const more = { ...(dice.uniform() < 0.12 && { sun: 'part' }), ...(dice.uniform() < 0.1 && { slope: dice.whole(3, 12) }) };
  const zone = readZone([`Zone ${index}`, drawn.kind, area, null, more], {
    name: `${property.seed} ${property.name}`,
    soil: property.soil,
  });
  zone.group = drawn.group;
  zone.trueFlow = zone.flowGpm * property.offFlow * Math.max(0.7, 1 + property.zoneNoise * dice.normal());
  zone.byRate = property.rated && /spray|rotor|nozzle/.test(zone.method);
  zone.need = needByDay(zone, property.station.days);
  return zone;
}

const controllersFor = (dice, zones) => (zones > 10 && dice.uniform() < 0.5 ? 2 : 1);

function drawControllers(property, dice) {
  const zones = Array.from({ length: dice.whole(3, dice.pick([6, 10, 14, 20])) }, (_, index) => drawZone(property, index + 1, dice));
  const count = controllersFor(dice, zones.length);
  const each = Math.ceil(zones.length / count);
  return Array.from({ length: count }, (_, index) => {
    const own = zones.slice(index * each, (index + 1) * each);
    const controller = { name: count === 1 ? dice.pick(['A', '1', 'Clock']) : 'AB'[index], zones: own };
    for (const [at, zone] of own.entries()) Object.assign(zone, { controller, stationNumber: at + 1 });
    return controller;
  });
}

function drawMeter(property, name, kind, dice) {
  const [unit, multiplier, resolution, digits] = dice.pick(property.fed && dice.uniform() < FINE_FEEDS ? DIALS.filter(isFine) : DIALS);
  const full = 10 ** digits;
  // One in eight starts again at zero within the fleet's time.
  const first = dice.uniform() < 0.125 ? full * dice.between(0.93, 0.995) : full * dice.between(0.02, 0.6);
  const bias = 1 + Math.max(-0.03, Math.min(0.03, 0.0075 * dice.normal()));
  return { name, kind, unit, multiplier, resolution, digits, first, bias, water: dice.pick(['potable', 'potable', 'recycled']) };
}

/** Meters in the order of meters.csv; `old` meters were changed for the one that follows them. */
function drawMeters(property, dice) {
  const meters = [drawMeter(property, 'Irrigation', property.kind === 'mixed' ? 'mixed' : 'irrigation', dice)];
  if (property.kind === 'two meters') meters.push(drawMeter(property, 'Street', 'irrigation', dice));
  if (property.swappedOn) {
    const fresh = { ...drawMeter(property, 'Irrigation 2', meters[0].kind, dice), first: 0, installed: property.swappedOn };
    meters[0].removed = property.swappedOn;
    meters.splice(1, 0, fresh);
  }
  return meters;
}

function assign(property, dice) {
  const standing = property.meters.filter((meter) => !meter.removed);
  property.assigned = property.meters.length > 1 || property.kind === 'part unmetered';
  for (const [index, zone] of property.zones.entries()) {
    const half = property.kind === 'two meters' && index >= property.zones.length / 2;
    const none = property.kind === 'part unmetered' && index > 1 && dice.uniform() < 0.35;
    zone.meter = none ? 'none' : half ? standing.at(-1).name : standing[0].name;
  }
}

function sized(property) {
  for (const meter of property.meters) {
    const largest = Math.max(5, ...property.zones.filter((zone) => zone.meter !== 'none').map((zone) => zone.trueFlow));
    const size = SIZES.find(([, most]) => most >= 1.3 * largest) ?? SIZES.at(-1);
    Object.assign(meter, { sizeIn: size[0], maxGpm: size[1] });
  }
}

function howItIsMetered(property, share, dice) {
  property.fed = dice.uniform() < share;
  const how = dice.uniform();
  property.metering = property.fed ? 'hourly' : how < 0.78 ? 'readings' : how < 0.92 ? 'bills' : 'both';
  property.swappedOn = null;
}

/** What is peculiar: settings not known, a timer that follows the weather, a sensor for rain. */
function howItIsSet(property, dice) {
  const how = dice.uniform();
  property.setting = how < 0.05 ? 'unknown' : how < 0.1 ? 'weather' : 'known';
  property.sensor = dice.uniform() < 0.3;
  property.pausing = dice.pick([0, 0.5, 0.85, 0.95]);
  // What crews give beside what plants need: most about right, some lavish, a few mean.
  const habit = dice.uniform();
  property.habit = habit < 0.6 ? dice.between(0.93, 1.1) : habit < 0.9 ? dice.between(1.15, 1.8) : dice.between(0.6, 0.85);
  property.lazy = dice.pick([0.05, 0.2, 0.6]);
  property.hand = property.kind === 'hand' ? { gallons: dice.whole(20, 120) * 10, metered: dice.uniform() < 0.3 } : null;
  property.indoor = property.kind === 'mixed' ? { gallons: dice.whole(10, 90) * 10, stated: dice.uniform() < 0.65 } : null;
}

/**
 * @param fleet seed, days, stations, the share with an hourly feed
 * @param {number} number its place in the fleet, from 1
 */
export function drawProperty(fleet, number) {
  const name = `Site ${String(number).padStart(4, '0')}`;
  const dice = diceFor(`property ${fleet.seed} ${name}`);
  const station = dice.pick(fleet.stations);
  const property = { seed: fleet.seed, name, station, soil: dice.pick(SOILS), kind: weighted(dice, KINDS), offFlow: systematic(dice) };
  Object.assign(property, { zoneNoise: dice.between(0.03, 0.08), rated: dice.uniform() < 0.1, drift: dice.between(-0.03, 0.03) });
  Object.assign(property, { scale: dice.pick([0.8, 1, 1.5, 2.2]), pressureNoise: dice.between(0.006, 0.03) });
  howItIsMetered(property, fleet.hourly, dice);
  howItIsSet(property, dice);
  const swaps = property.metering === 'readings' && ['one meter', 'hand'].includes(property.kind) && dice.uniform() < 0.08;
  if (swaps) property.swappedOn = fleet.from + Math.floor((fleet.last - fleet.from) * dice.between(0.3, 0.8));
  property.controllers = drawControllers(property, dice);
  property.zones = property.controllers.flatMap((controller) => controller.zones);
  property.meters = drawMeters(property, dice);
  assign(property, dice);
  sized(property);
  property.builtOn = dateText(fleet.from - dice.whole(400, 6000));
  return property;
}
