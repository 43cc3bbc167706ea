// Invented controllers for the planning proofs: every number comes from one seed.
const IN = 25.4;
/** Texture by intake, accumulation on flat ground [in/h, in] (Irrigation Association 2005, as the soil tables of this project have them). */
const SOILS = [
  [0.1, 0.2],
  [0.2, 0.26],
  [0.35, 0.3],
  [0.4, 0.33],
  [0.6, 0.4],
];
/** Method: rate [in/h], flow [L/min] from and to, plants. */
const METHODS = [
  ['spray', 1.3, 2.0, 'cool turf'],
  ['rotor', 0.4, 0.6, 'warm turf'],
  ['rotary', 0.4, 0.7, 'shrubs'],
  ['drip', 0.5, 1.0, 'shrubs'],
];
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** A repeatable source of numbers from 0 to 1. */
export function numbersFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function zoneOf(next, station) {
  const [method, least, most, plants] = METHODS[Math.floor(next() * METHODS.length)];
  const rate = (least + next() * (most - least)) * IN;
  const areaM2 = 40 + next() * 560;
  const flowLPerMin = (rate * areaM2) / 60;
  const [intake, accumulation] = SOILS[Math.floor(next() * SOILS.length)];
  const use = 0.8 + next() * 4.7;
  const needMm = use * (0.7 + next() * 0.3);
  const raw = plants.includes('turf') ? 8 + next() * 18 : 20 + next() * 60;
  return {
    zoneId: `zone ${station}`,
    station,
    plants,
    method,
    needLitresPerDay: (needMm * areaM2) / 0.8,
    flowLPerMin,
    storageDays: next() < 0.1 ? null : raw / use,
    intake:
      method === 'drip' || next() < 0.3
        ? null
        : { precipitationRate: rate, intakeRate: intake * IN, surfaceAccumulation: accumulation * IN },
    fillMinutes: method === 'drip' && next() < 0.2 ? 2 : 0,
  };
}

const RULE = {
  name: 'stage 2',
  allowedDays: null,
  daysPerWeek: null,
  addressParity: null,
  blockedFrom: null,
  blockedUntil: null,
  maxMinutes: null,
  hoursAfterRain: null,
  rainMm: null,
  plants: null,
  exemptMethods: null,
  water: null,
  effectiveFrom: null,
  effectiveUntil: null,
};

function rulesOf(next) {
  const kind = next();
  if (kind < 0.4) return [];
  if (kind < 0.6) return [{ ...RULE, daysPerWeek: 1 + Math.floor(next() * 4) }];
  if (kind < 0.7) return [{ ...RULE, allowedDays: { kind: 'weekdays', weekdays: WEEKDAYS.filter(() => next() < 0.5).concat(['Sat']) } }];
  if (kind < 0.8) return [{ ...RULE, blockedFrom: 600, blockedUntil: 1140, exemptMethods: ['drip'] }];
  if (kind < 0.9)
    return [{ ...RULE, daysPerWeek: 2 + Math.floor(next() * 2), exemptMethods: ['drip'], blockedFrom: 360, blockedUntil: 1200 }];
  return [
    { ...RULE, addressParity: next() < 0.5 ? 'odd' : 'even' },
    { ...RULE, name: 'minutes', maxMinutes: 15 + Math.floor(next() * 30), exemptMethods: ['drip'] },
  ];
}

function presentOf(next, zones, programs, step) {
  const names = ['A', 'B', 'C', 'D'].slice(0, programs);
  return names
    .map((name, at) => ({
      name,
      days: next() < 0.3 ? { kind: 'daily' } : { kind: 'weekdays', weekdays: WEEKDAYS.filter((_, day) => (day + at) % 2 === 0) },
      starts: [120 + at * 120],
      adjustPercent: 100,
      stations: zones
        .filter((_, index) => index % programs === at)
        .map(({ station }) => ({
          station,
          minutes: Math.max(step, Math.round((4 + next() * 26) / step) * step),
          cycles: 1,
          soakMinutes: 0,
        })),
    }))
    .filter(({ stations }) => stations.length);
}

/** One controller and month, invented; with odd limits its timer may hold less than its records say, and have percents of the months. */
export function inventedController(seed, { mostZones = 24, mostPrograms = 4, oddLimits = false } = {}) {
  const next = numbersFrom(seed);
  const zones = Array.from({ length: 1 + Math.floor(next() * mostZones) }, (_, at) => zoneOf(next, at + 1));
  const programs = 1 + Math.floor(next() * mostPrograms);
  const step = [0.5, 1, 1, 1, 5][Math.floor(next() * 5)];
  const cycleSoak = next() < 0.7;
  // What a timer holds has numbers of its own, so that a wider world changes no other.
  const odd = numbersFrom(seed + 0x51ed);
  const of = (...choices) => choices[Math.floor(odd() * choices.length)];
  const limits = oddLimits
    ? {
        startsPerProgram: of(1, 2, 4, 8, null),
        maxMinutes: of(10, 30, 59, 99, 240, null),
        maxAdjustPercent: of(95, 100, 150, 200, null),
        monthlyAdjustPercent: odd() < 0.5 ? Array.from({ length: 12 }, () => of(30, 55, 70, 100, 130)) : null,
        stations: of(4, 24, null),
      }
    : {};
  return {
    month: '2026-07',
    traits: {
      stations: 24,
      programs,
      startsPerProgram: 4,
      maxMinutes: 240,
      minuteStep: step,
      adjustScope: next() < 0.5 ? 'controller' : 'program',
      adjustStepPercent: [1, 5, 10][Math.floor(next() * 3)],
      maxAdjustPercent: 200,
      monthlyAdjustPercent: null,
      runsAtOnce: next() < 0.8 ? null : 2,
      cycleSoak,
      rainSensor: null,
      rainSensorMm: null,
      ...limits,
    },
    zones,
    present: next() < 0.85 ? presentOf(next, zones, programs, step) : null,
    rules: rulesOf(next),
    place: { addressNumber: Math.floor(next() * 900), water: 'potable' },
    window: next() < 0.5 ? { from: 1260, until: 360 } : { from: 0, until: 420 },
    flowLimitLPerMin: next() < 0.5 ? null : 250 + next() * 200,
    weights: { thirst: 3, waste: 1, keyPress: 10, watering: 1 },
  };
}
