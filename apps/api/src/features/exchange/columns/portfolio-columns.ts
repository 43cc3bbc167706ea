import { HIGHEST_DENSITY } from '@rillbook/agronomy/plants/density-factor.js';
import { HIGHEST_PLANT_FACTOR } from '@rillbook/agronomy/plants/plant-factor.js';
import { DEEPEST_ROOTS } from '@rillbook/agronomy/plants/root-depth.js';
import { HIGHEST_ETAF } from '@rillbook/metering/volumes/ordinance-allowance.js';
import { inchesFromMillimetres } from '@rillbook/units/length.js';
import { volumeUnits } from '@rillbook/units/volume.js';
import { type Columns, may, must, or } from './column.js';
import { asWritten, feet, gallons, gallonsPerMinute, inches, inchesPerHour, psi, squareFeet } from './column-units.js';
import { number, type Range, twelve, whole } from './number-cells.js';
import { emails, name, nameOrNone, text } from './text-cells.js';
import { date } from './time-cells.js';
import { oneOf, timeZone, yesNo } from './word-cells.js';

/** Money in the organization's currency; no plausible bill is above a hundred million. */
export const money: Range = { min: 0, max: 1e8 };
/** A register or volume in a meter's own unit. */
export const volume: Range = { min: 0, max: 1e12 };
/** The units that meters, bills and rates are written in. */
export const volumeUnit = oneOf(...volumeUnits);
/** Plant water-need categories. */
export const waterNeed = oneOf('very low', 'low', 'moderate', 'high');
/** The words for what grows in a zone. */
export const PLANTS = [
  'turf cool-season',
  'turf warm-season',
  'trees',
  'shrubs',
  'groundcover',
  'perennials',
  'annuals',
  'vegetables',
  'mixed',
] as const;
/** The words for how water is put out. */
export const METHODS = ['spray', 'rotor', 'rotary nozzle', 'bubbler', 'microspray', 'drip', 'subsurface drip', 'hand'] as const;
/** Where water comes from. */
export const WATERS = ['potable', 'recycled', 'well'] as const;

const SOILS = ['sand', 'loamy sand', 'sandy loam', 'loam', 'silt loam', 'clay loam', 'silty clay', 'clay'] as const;
const latitude = number(asWritten, { min: -90, max: 90 });
const longitude = number(asWritten, { min: -180, max: 180 });
const elevation = number(feet, { min: -1500, max: 30_000 });
const percent: Range = { min: 0, max: 1000 };
const gallonsAMonth: Range = { min: 0, max: 1e9 };

export const clients = {
  client: must('client', name()),
  emails: may('emails', emails),
  language: may('language', oneOf('en', 'es')),
  units: may('units', oneOf('us', 'metric')),
  not_to_exceed: may('notToExceed', number(asWritten, money)),
} satisfies Columns;

export const stations = {
  station: must('station', name()),
  latitude: must('latitude', latitude),
  longitude: must('longitude', longitude),
  elevation_ft: may('elevationM', elevation),
} satisfies Columns;

export const properties = {
  property: must('property', name()),
  client: must('client', name()),
  address: may('address', text),
  city: may('city', text),
  latitude: may('latitude', latitude),
  longitude: may('longitude', longitude),
  elevation_ft: may('elevationM', elevation),
  time_zone: may('timeZone', timeZone),
  weather_station: may('weatherStation', name()),
  water_supplier: may('waterSupplier', name()),
  allowance_from: may('allowanceFrom', oneOf('ordinance', 'contract')),
  allowance_etaf: may('allowanceEtaf', number(asWritten, { min: 0, above: true, max: HIGHEST_ETAF })),
  allowance_gal_per_month: may('allowanceLitresPerMonth', twelve(gallons, gallonsAMonth)),
  special_landscape_area_sqft: may('specialLandscapeAreaM2', number(squareFeet, { min: 0, max: 1e9 })),
  notes: may('notes', text),
} satisfies Columns;

export const meters = {
  meter: must('meter', name('none')),
  property: must('property', name()),
  kind: may('kind', oneOf('irrigation', 'mixed')),
  water: may('water', oneOf(...WATERS)),
  unit: must('unit', volumeUnit),
  multiplier: or('multiplier', number(asWritten, { min: 0, above: true, max: 1e6 }), 1),
  digits: may('digits', whole({ min: 1, max: 12 })),
  resolution: may('resolution', number(asWritten, { min: 0, above: true, max: 1e6 })),
  size_in: may('sizeMm', number(inches, { min: 0, above: true, max: 60 })),
  max_gpm: may('maxLPerMin', number(gallonsPerMinute, { min: 0, above: true, max: 100_000 })),
  pressure_psi: may('pressureKpa', number(psi, { min: 0, max: 500 })),
  indoor_gal_per_day: may('indoorLPerDay', number(gallons, { min: 0, max: 1e7 })),
  price_per_unit: may('pricePerUnit', number(asWritten, money)),
  installed_on: may('installedOn', date),
  first_register: may('firstRegister', number(asWritten, volume)),
  removed_on: may('removedOn', date),
  last_register: may('lastRegister', number(asWritten, volume)),
} satisfies Columns;

export const controllers = {
  controller: must('controller', name()),
  property: must('property', name()),
  stations: must('stations', whole({ min: 1, max: 500 })),
  programs: may('programs', whole({ min: 1, max: 100 })),
  starts_per_program: may('startsPerProgram', whole({ min: 1, max: 100 })),
  max_minutes: may('maxMinutes', number(asWritten, { min: 0, above: true, max: 1440 })),
  minute_step: may('minuteStep', number(asWritten, { min: 0, above: true, max: 60 })),
  adjust_scope: may('adjustScope', oneOf('controller', 'program')),
  adjust_step_percent: may('adjustStepPercent', number(asWritten, { min: 0, above: true, max: 100 })),
  max_adjust_percent: may('maxAdjustPercent', number(asWritten, percent)),
  monthly_adjust_percent: may('monthlyAdjustPercent', twelve(asWritten, percent)),
  runs_at_once: may('runsAtOnce', whole({ min: 1, max: 100 })),
  cycle_soak: may('cycleSoak', yesNo),
  master_valve: may('masterValve', yesNo),
  rain_sensor: may('rainSensor', yesNo),
  rain_sensor_in: may('rainSensorMm', number(inches, { min: 0, max: 10 })),
  flow_sensor: may('flowSensor', yesNo),
  location: may('location', text),
} satisfies Columns;

export const zones = {
  property: must('property', name()),
  zone: must('zone', name()),
  controller: may('controller', name()),
  station: may('station', whole({ min: 1, max: 500 })),
  meter: may('meter', nameOrNone),
  area_sqft: must('areaM2', number(squareFeet, { min: 0, above: true, max: 1e8 })),
  plants: may('plants', oneOf(...PLANTS)),
  water_need: may('waterNeed', waterNeed),
  plant_factor: may('plantFactor', number(asWritten, { min: 0, max: HIGHEST_PLANT_FACTOR })),
  method: must('method', oneOf(...METHODS)),
  precip_in_per_hr: may('precipMmPerH', number(inchesPerHour, { min: 0, above: true, max: 50 })),
  flow_gpm: may('flowLPerMin', number(gallonsPerMinute, { min: 0, above: true, max: 10_000 })),
  flow_source: may('flowSource', oneOf('measured', 'nameplate', 'assumed')),
  hand_gal_per_week: may('handLPerWeek', number(gallons, { min: 0, max: 1e7 })),
  du_lq: may('duLq', number(asWritten, { min: 0, above: true, max: 1 })),
  soil: may('soil', oneOf(...SOILS)),
  slope_percent: may('slopePercent', number(asWritten, { min: 0, max: 300 })),
  sun: may('sun', oneOf('full', 'part', 'shade')),
  density: or('density', number(asWritten, { min: 0, above: true, max: HIGHEST_DENSITY }), 1),
  root_depth_in: may('rootDepthMm', number(inches, { min: 0, above: true, max: Math.floor(inchesFromMillimetres(DEEPEST_ROOTS)) })),
  mulch_in: may('mulchMm', number(inches, { min: 0, max: 40 })),
  leaching_fraction: may('leachingFraction', number(asWritten, { min: 0, max: 1, below: true })),
  established_on: may('establishedOn', date),
} satisfies Columns;

export const plantings = {
  property: must('property', name()),
  zone: must('zone', name()),
  species: must('species', name()),
  cover_percent: may('coverPercent', number(asWritten, { min: 0, max: 100 })),
  water_need: may('waterNeed', waterNeed),
  planted_on: may('plantedOn', date),
} satisfies Columns;
