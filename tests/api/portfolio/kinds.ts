import type { Built } from '../../support/builders.js';

/** What stands already, for others to point at. */
export interface Standing {
  readonly client: Built;
  readonly station: Built;
  readonly supplier: Built;
  readonly place: Built;
  readonly controller: Built;
  readonly meter: Built;
  readonly zone: Built;
}

/** Inputs of one kind of thing: all that may be said of it, the least, and what is shown of the rest after the least was said. */
export interface Kind {
  readonly whole: Record<string, unknown>;
  readonly least: Record<string, unknown>;
  readonly left: Record<string, unknown>;
}

const twelve = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

/** A null for each of some fields. */
const nulls = (...fields: string[]): Record<string, null> => Object.fromEntries(fields.map((field) => [field, null]));

/** Every kind of thing that an office keeps, by its GraphQL name. */
export const KINDS: Readonly<Record<string, (standing: Standing) => Kind>> = {
  Client: () => ({
    whole: { name: 'Whole', emails: ['board@example.test'], language: 'es', units: 'metric', notToExceed: 250 },
    least: { name: 'Least' },
    left: { emails: [], ...nulls('language', 'units', 'notToExceed') },
  }),
  Property: ({ client, station, supplier }) => ({
    whole: {
      name: 'Whole',
      clientId: client.id,
      address: '1 Larch Lane',
      city: 'Elderbrook',
      latitude: 38.5,
      longitude: -121.5,
      elevationM: 20,
      timeZone: 'America/Denver',
      weatherStationId: station.id,
      waterSupplierId: supplier.id,
      allowanceFrom: 'contract',
      allowanceEtaf: 0.8,
      allowanceLitresPerMonth: twelve,
      specialLandscapeAreaM2: 40,
      notes: 'Dog',
    },
    least: { name: 'Least', clientId: client.id, timeZone: 'UTC' },
    left: {
      ...nulls(
        'address',
        'city',
        'latitude',
        'longitude',
        'elevationM',
        'allowanceFrom',
        'allowanceEtaf',
        'allowanceLitresPerMonth',
        'specialLandscapeAreaM2',
        'notes',
      ),
    },
  }),
  Meter: ({ place }) => ({
    whole: {
      propertyId: place.id,
      name: 'Whole',
      kind: 'mixed',
      water: 'recycled',
      unit: 'kgal',
      multiplier: 10,
      digits: 6,
      resolution: 0.1,
      sizeMm: 50,
      maxLPerMin: 600,
      pressureKpa: 500,
      indoorLPerDay: 900,
      pricePerUnit: 5.5,
      installedOn: '2020-01-01',
      firstRegister: 12,
      removedOn: '2026-01-01',
      lastRegister: 9000,
    },
    least: { propertyId: place.id, name: 'Least', kind: 'irrigation', water: 'potable', unit: 'CCF' },
    left: {
      multiplier: 1,
      ...nulls(
        'digits',
        'resolution',
        'sizeMm',
        'maxLPerMin',
        'pressureKpa',
        'indoorLPerDay',
        'pricePerUnit',
        'installedOn',
        'firstRegister',
        'removedOn',
        'lastRegister',
      ),
    },
  }),
  Controller: ({ place }) => ({
    whole: {
      propertyId: place.id,
      name: 'Whole',
      stations: 24,
      programs: 3,
      startsPerProgram: 4,
      maxMinutes: 120,
      minuteStep: 1,
      adjustScope: 'program',
      adjustStepPercent: 5,
      maxAdjustPercent: 200,
      monthlyAdjustPercent: twelve,
      runsAtOnce: 2,
      cycleSoak: true,
      masterValve: false,
      rainSensor: true,
      rainSensorMm: 6,
      flowSensor: false,
      location: 'Pool house',
    },
    least: { propertyId: place.id, name: 'Least', stations: 6 },
    left: {
      ...nulls(
        'programs',
        'startsPerProgram',
        'maxMinutes',
        'minuteStep',
        'adjustScope',
        'adjustStepPercent',
        'maxAdjustPercent',
        'monthlyAdjustPercent',
        'runsAtOnce',
        'cycleSoak',
        'masterValve',
        'rainSensor',
        'rainSensorMm',
        'flowSensor',
        'location',
      ),
    },
  }),
  Zone: ({ place, controller, meter }) => ({
    whole: {
      propertyId: place.id,
      name: 'Whole',
      controllerId: controller.id,
      station: 4,
      meterId: meter.id,
      unmetered: false,
      areaM2: 250,
      plants: 'shrubs',
      waterNeed: 'low',
      plantFactor: 0.3,
      method: 'drip',
      precipMmPerH: 20,
      flowLPerMin: 30,
      flowSource: 'measured',
      handLPerWeek: 0,
      duLq: 0.8,
      soil: 'clay loam',
      slopePercent: 5,
      fillMinutes: 2.5,
      sun: 'part',
      density: 1.1,
      rootDepthMm: 450,
      mulchMm: 75,
      leachingFraction: 0.1,
      establishedOn: '2024-03-01',
    },
    least: { propertyId: place.id, name: 'Least', areaM2: 100, method: 'spray' },
    left: {
      unmetered: false,
      ...nulls(
        'controllerId',
        'station',
        'meterId',
        'plants',
        'waterNeed',
        'plantFactor',
        'precipMmPerH',
        'flowLPerMin',
        'flowSource',
        'handLPerWeek',
        'duLq',
        'soil',
        'slopePercent',
        'fillMinutes',
        'sun',
        'density',
        'rootDepthMm',
        'mulchMm',
        'leachingFraction',
        'establishedOn',
      ),
    },
  }),
  Planting: ({ zone }) => ({
    whole: { zoneId: zone.id, species: 'Whole', coverPercent: 40, waterNeed: 'very low', plantedOn: '2025-10-01' },
    least: { zoneId: zone.id, species: 'Least' },
    left: { ...nulls('coverPercent', 'waterNeed', 'plantedOn') },
  }),
  BackflowAssembly: ({ place }) => ({
    whole: {
      propertyId: place.id,
      name: 'Whole',
      location: 'Front',
      kind: 'reduced pressure',
      lastTestedOn: '2025-05-01',
      nextTestDueOn: '2026-05-01',
    },
    least: { propertyId: place.id, name: 'Least' },
    left: { ...nulls('location', 'kind', 'lastTestedOn', 'nextTestDueOn') },
  }),
  WateringRule: ({ supplier }) => ({
    whole: {
      supplierId: supplier.id,
      name: 'Whole',
      allowedDays: 'Mon Thu',
      daysPerWeek: 2,
      addressParity: 'odd',
      blockedFrom: '10:00',
      blockedUntil: '18:00',
      maxMinutes: 15,
      hoursAfterRain: 48,
      rainMm: 6,
      plants: 'turf cool-season',
      exemptMethods: 'drip, hand',
      water: 'potable',
      effectiveFrom: '2026-05-01',
      effectiveUntil: '2026-10-31',
    },
    least: { supplierId: supplier.id, name: 'Least' },
    left: {
      ...nulls(
        'allowedDays',
        'daysPerWeek',
        'addressParity',
        'blockedFrom',
        'blockedUntil',
        'maxMinutes',
        'hoursAfterRain',
        'rainMm',
        'plants',
        'exemptMethods',
        'water',
        'effectiveFrom',
        'effectiveUntil',
      ),
    },
  }),
  RateTier: ({ supplier }) => ({
    whole: {
      supplierId: supplier.id,
      effectiveFrom: '2026-01-01',
      fixed: 42,
      tier: 1,
      upTo: 1.5,
      upToIs: 'share of allowance',
      unit: 'CCF',
      price: 3.86,
    },
    least: { supplierId: supplier.id, effectiveFrom: '2026-01-01', tier: 2, unit: 'CCF', price: 5 },
    left: { ...nulls('fixed', 'upTo', 'upToIs') },
  }),
  WaterSupplier: () => ({ whole: { name: 'Whole' }, least: { name: 'Least' }, left: {} }),
  WeatherStation: () => ({
    whole: { name: 'Whole', latitude: 38.5, longitude: -121.5, elevationM: 18 },
    least: { name: 'Least', latitude: 0, longitude: 0 },
    left: { ...nulls('elevationM') },
  }),
};
