// A zone is written in the worlds as [name, 'plants method', area, program, more]; here it becomes a full zone.
import { diceFor } from '../sky/random.mjs';

const PLANTS = {
  cool: { word: 'turf cool-season', need: '', factor: 0.8, rootIn: 8, depletion: 0.4 },
  warm: { word: 'turf warm-season', need: '', factor: 0.6, rootIn: 10, depletion: 0.5 },
  trees: { word: 'trees', need: 'moderate', rootIn: 30, depletion: 0.5 },
  shrubs: { word: 'shrubs', need: 'low', rootIn: 20, depletion: 0.5 },
  groundcover: { word: 'groundcover', need: 'low', rootIn: 12, depletion: 0.5 },
  perennials: { word: 'perennials', need: 'moderate', rootIn: 12, depletion: 0.5 },
  annuals: { word: 'annuals', need: 'high', rootIn: 8, depletion: 0.4 },
  vegetables: { word: 'vegetables', need: 'high', rootIn: 12, depletion: 0.4 },
  mixed: { word: 'mixed', need: 'moderate', rootIn: 14, depletion: 0.5 },
};
const METHODS = {
  spray: { word: 'spray', inPerHr: 1.5, du: 0.62, usualDu: 0.65, cycleMin: 8 },
  rotor: { word: 'rotor', inPerHr: 0.48, du: 0.69, usualDu: 0.7, cycleMin: 25 },
  nozzle: { word: 'rotary nozzle', inPerHr: 0.45, du: 0.72, usualDu: 0.7, cycleMin: 25 },
  bubbler: { word: 'bubbler', inPerHr: 0.5, du: 0.85, cycleMin: 30 },
  micro: { word: 'microspray', inPerHr: 0.6, du: 0.7, cycleMin: 60 },
  drip: { word: 'drip', inPerHr: 0.34, du: 0.86, cycleMin: 240 },
  sub: { word: 'subsurface drip', inPerHr: 0.4, du: 0.88, cycleMin: 240 },
  hand: { word: 'hand', inPerHr: null, du: 0.8, cycleMin: 240 },
};
const FACTOR_OF_NEED = { 'very low': 0.1, low: 0.2, moderate: 0.5, high: 0.8 };
const SUN_FACTOR = { full: 1, part: 0.9, shade: 0.8 };
export const WATER_IN_PER_IN = {
  sand: 0.06,
  'loamy sand': 0.08,
  'sandy loam': 0.12,
  loam: 0.17,
  'silt loam': 0.18,
  'clay loam': 0.18,
  'silty clay': 0.17,
  clay: 0.17,
};

const round = (value, step) => Math.round(value / step) * step;

function plantFactor(plants, more) {
  const need = more.need ?? plants.need;
  const factor = more.factor ?? plants.factor ?? FACTOR_OF_NEED[need];
  const stated = more.factor !== undefined || need === 'high' || need === 'very low';
  return { needWord: more.factor === undefined ? need : (more.need ?? ''), factor, statedFactor: stated ? factor : null };
}

function flowOf(method, area, more, dice) {
  if (method.inPerHr === null) return { flowGpm: null, inPerHr: null };
  const rate = more.inPerHr ?? method.inPerHr * (1 + 0.07 * dice.normal());
  const flowGpm = more.flowGpm ?? Math.max(0.4, round((rate * area) / 96.25, 0.1));
  return { flowGpm, inPerHr: (96.25 * flowGpm) / area };
}

function uniformity(method, more, dice) {
  if (more.duUnknown) return method.usualDu;
  return more.du ?? round(method.du + 0.03 * dice.normal(), 0.01);
}

function standing(plants, { sun = 'full', density = 1, rootIn = plants.rootIn }) {
  return { sun, climate: SUN_FACTOR[sun] * density, rootIn };
}

/**
 * @param written [name, 'plants method', area in sq ft, program or null, more]
 * @param property the property it lies on
 */
export function readZone([name, kind, area, program, more = {}], property) {
  const [plantWord, methodWord] = kind.split(' ');
  const plants = PLANTS[plantWord];
  const method = METHODS[methodWord];
  const dice = diceFor(`zone ${property.name} ${name}`);
  const du = uniformity(method, more, dice);
  return {
    name,
    area,
    program,
    more,
    plants: plants.word,
    method: method.word,
    ...plantFactor(plants, more),
    ...flowOf(method, area, more, dice),
    du,
    soil: more.soil ?? property.soil,
    ...standing(plants, more),
    depletion: plants.depletion,
    leaching: more.leaching ?? 0,
    cycleMin: method.cycleMin * (more.slope > 6 ? 0.7 : 1),
    times: more.times ?? 1,
  };
}
