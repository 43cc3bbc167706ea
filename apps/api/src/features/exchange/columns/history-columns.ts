import { HIGHEST_HUMIDITY } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { type Columns, may, must, or } from './column.js';
import { asWritten, fahrenheit, feet, inches, milesPerHour } from './column-units.js';
import { allowedDays, programDays } from './days-cells.js';
import { number, whole } from './number-cells.js';
import { METHODS, money, PLANTS, volume, volumeUnit, WATERS } from './portfolio-columns.js';
import { name, text } from './text-cells.js';
import { date, instant, localTime, starts } from './time-cells.js';
import { oneOf, someOf, yesNo } from './word-cells.js';

const minutesOfDay = number(asWritten, { min: 0, max: 1440 });
const temperature = number(fahrenheit, { min: -80, max: 150 });
const humidity = number(asWritten, { min: 0, max: HIGHEST_HUMIDITY });

export const settings = {
  property: may('property', name()),
  controller: must('controller', name()),
  effective_at: must('effectiveAt', instant),
  record: or('record', oneOf('found', 'left', 'planned'), 'found'),
  state: or('state', oneOf('on', 'off', 'weather', 'unknown'), 'on'),
  program: may('program', name()),
  days: may('days', programDays),
  starts: may('starts', starts),
  adjust_percent: or('adjustPercent', number(asWritten, { min: 0, max: 1000 }), 100),
  station: may('station', whole({ min: 1, max: 500 })),
  minutes: may('minutes', minutesOfDay),
  cycles: or('cycles', whole({ min: 1, max: 100 }), 1),
  soak_min: or('soakMinutes', minutesOfDay, 0),
} satisfies Columns;

export const pauses = {
  property: may('property', name()),
  controller: must('controller', name()),
  paused_from: must('pausedFrom', instant),
  paused_until: may('pausedUntil', instant),
} satisfies Columns;

export const readings = {
  property: may('property', name()),
  meter: must('meter', name()),
  read_at: must('readAt', instant),
  register: must('register', number(asWritten, volume)),
  source: may('source', oneOf('crew', 'bill', 'feed')),
  note: may('note', text),
} satisfies Columns;

export const usage = {
  property: may('property', name()),
  meter: must('meter', name()),
  start: must('start', instant),
  end: must('end', instant),
  volume: must('volume', number(asWritten, volume)),
  unit: may('unit', volumeUnit),
} satisfies Columns;

export const bills = {
  property: may('property', name()),
  meter: must('meter', name()),
  start: must('startOn', date),
  end: must('end', date),
  end_included: or('endIncluded', yesNo, false),
  volume: must('volume', number(asWritten, volume)),
  unit: may('unit', volumeUnit),
  amount: may('amount', number(asWritten, { min: -money.max, max: money.max })),
} satisfies Columns;

export const weather = {
  station: must('station', name()),
  date: must('day', date),
  tmax_f: may('tmaxC', temperature),
  tmin_f: may('tminC', temperature),
  rhmax: may('rhMaxPercent', humidity),
  rhmin: may('rhMinPercent', humidity),
  dewpoint_f: may('dewPointC', temperature),
  wind_mph: may('windMPerS', number(milesPerHour, { min: 0, max: 250 })),
  wind_height_ft: may('windHeightM', number(feet, { min: 0, above: true, max: 500 })),
  solar_mj_m2: may('solarMjPerM2', number(asWritten, { min: 0, max: 50 })),
  rain_in: may('rainMm', number(inches, { min: 0, max: 80 })),
  eto_in: may('givenEtoMm', number(inches, { min: 0, max: 2 })),
} satisfies Columns;

export const rules = {
  rule: must('rule', name()),
  water_supplier: must('waterSupplier', name()),
  allowed_days: may('allowedDays', allowedDays),
  days_per_week: may('daysPerWeek', whole({ min: 0, max: 7 })),
  address_parity: may('addressParity', oneOf('odd', 'even')),
  blocked_from: may('blockedFrom', localTime),
  blocked_until: may('blockedUntil', localTime),
  max_minutes: may('maxMinutes', minutesOfDay),
  hours_after_rain: may('hoursAfterRain', number(asWritten, { min: 0, max: 1000 })),
  rain_in: may('rainMm', number(inches, { min: 0, max: 80 })),
  plants: may('plants', someOf(...PLANTS)),
  exempt_methods: may('exemptMethods', someOf(...METHODS)),
  water: may('water', someOf(...WATERS)),
  effective_from: may('effectiveFrom', date),
  effective_until: may('effectiveUntil', date),
} satisfies Columns;

export const rates = {
  water_supplier: must('waterSupplier', name()),
  effective_from: must('effectiveFrom', date),
  fixed: may('fixed', number(asWritten, money)),
  tier: must('tier', whole({ min: 1, max: 50 })),
  up_to: may('upTo', number(asWritten, { min: 0, above: true, max: 1e9 })),
  up_to_is: may('upToIs', oneOf('volume', 'share of allowance')),
  unit: must('unit', volumeUnit),
  price: must('price', number(asWritten, money)),
} satisfies Columns;

export const backflow = {
  property: must('property', name()),
  assembly: must('assembly', name()),
  location: may('location', text),
  kind: may('kind', text),
  last_tested_on: may('lastTestedOn', date),
  next_test_due_on: may('nextTestDueOn', date),
} satisfies Columns;
