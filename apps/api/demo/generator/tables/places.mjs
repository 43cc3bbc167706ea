// Clients, properties and what stands on them.
import { minuteOf } from '../sky/calendar.mjs';
import { stationsFor } from '../timers/models.mjs';
import { registerAt } from '../meters/registers.mjs';
import { trimmed } from './csv.mjs';

const yes = (value) => (value ? 'yes' : 'no');

export const clients = (world) => ({
  header: ['client', 'emails', 'language', 'units', 'not_to_exceed'],
  rows: world.clients.map((client) => [client.name, client.emails, client.language ?? 'en', client.units ?? 'us', client.notToExceed]),
});

function allowanceCells({ etaf, contract, special }) {
  return [contract ? 'contract' : 'ordinance', etaf ?? '', contract ? contract.join(' ') : '', special ?? ''];
}

export const properties = (world) => ({
  header: [
    ...['property', 'client', 'address', 'city', 'latitude', 'longitude', 'elevation_ft', 'time_zone', 'weather_station', 'water_supplier'],
    ...['allowance_from', 'allowance_etaf', 'allowance_gal_per_month', 'special_landscape_area_sqft', 'notes'],
  ],
  rows: world.properties.map((property) => [
    ...[property.name, property.client, property.address, world.city, property.at[0].toFixed(4), property.at[1].toFixed(4)],
    ...[property.elevationFt, 'America/Los_Angeles', property.station, property.supplier],
    ...allowanceCells(property.allowance),
    property.notes ?? '',
  ]),
});

function meterRow(property, meter) {
  const stated = meter.indoor?.stated ? meter.indoor.gallons : '';
  return [
    ...[
      meter.name,
      property.name,
      meter.kind,
      meter.water,
      meter.unit,
      meter.multiplier ?? 1,
      meter.digits,
      meter.resolution,
      meter.sizeIn,
    ],
    ...[meter.maxGpm, meter.psi, stated, meter.pricePerUnit ?? '', (meter.installed ?? meter.since ?? '').slice(0, 10)],
    ...[meter.installed ? registerAt(meter, minuteOf(meter.installed)) : '', (meter.removed ?? '').slice(0, 10)],
    meter.removed ? registerAt(meter, minuteOf(meter.removed)) : '',
  ];
}

export const meters = (world) => ({
  header: [
    ...['meter', 'property', 'kind', 'water', 'unit', 'multiplier', 'digits', 'resolution', 'size_in', 'max_gpm', 'pressure_psi'],
    ...['indoor_gal_per_day', 'price_per_unit', 'installed_on', 'first_register', 'removed_on', 'last_register'],
  ],
  rows: world.properties.flatMap((property) => property.meters.map((meter) => meterRow(property, meter))),
});

function controllerRow(property, { name, zones, model, monthly, location }) {
  return [
    ...[name, property.name, stationsFor(zones.length), model.programs, model.starts, model.maxMinutes, model.minuteStep],
    ...[model.adjustScope, model.adjustStep, model.adjustMost, monthly ? monthly.join(' ') : '', 1, 'yes'],
    ...[yes(model.masterValve), yes(model.rainSensor), model.rainSensor ? '0.25' : '', yes(model.flowSensor), location],
  ];
}

export const controllers = (world) => ({
  header: [
    ...['controller', 'property', 'stations', 'programs', 'starts_per_program', 'max_minutes', 'minute_step', 'adjust_scope'],
    ...['adjust_step_percent', 'max_adjust_percent', 'monthly_adjust_percent', 'runs_at_once', 'cycle_soak', 'master_valve'],
    ...['rain_sensor', 'rain_sensor_in', 'flow_sensor', 'location'],
  ],
  rows: world.properties.flatMap((property) => property.controllers.map((controller) => controllerRow(property, controller))),
});

function waterCells(zone, property) {
  const { more } = zone;
  const rate = more.flowUnknown || (property.audited && /spray|rotor|rotary/.test(zone.method)) ? trimmed(zone.inPerHr, 2) : '';
  const flow = more.flowUnknown || zone.flowGpm === null ? '' : trimmed(zone.flowGpm, 1);
  return [
    zone.method,
    rate,
    flow,
    flow === '' ? '' : property.flowSource,
    more.handGallons ?? '',
    more.duUnknown ? '' : trimmed(zone.du, 2),
  ];
}

function zoneRow(property, zone) {
  const { more } = zone;
  return [
    ...[property.name, zone.name, zone.controller, zone.station, zone.assigned ? zone.meter : '', zone.area, zone.plants, zone.needWord],
    ...[zone.statedFactor, ...waterCells(zone, property), zone.soil, more.slope ?? '', zone.sun, more.density ?? ''],
    ...[more.rootIn ?? '', more.mulch ?? '', more.leaching ?? '', more.establishedOn ?? ''],
  ];
}

export const zones = (world) => ({
  header: [
    ...['property', 'zone', 'controller', 'station', 'meter', 'area_sqft', 'plants', 'water_need', 'plant_factor', 'method'],
    ...['precip_in_per_hr', 'flow_gpm', 'flow_source', 'hand_gal_per_week', 'du_lq', 'soil', 'slope_percent', 'sun', 'density'],
    ...['root_depth_in', 'mulch_in', 'leaching_fraction', 'established_on'],
  ],
  rows: world.properties.flatMap((property) => property.zones.map((zone) => zoneRow(property, zone))),
});

export const plantings = (world) => ({
  header: ['property', 'zone', 'species', 'cover_percent', 'water_need', 'planted_on'],
  rows: world.properties.flatMap((property) =>
    property.zones.flatMap((zone) =>
      (zone.more.species ?? []).map(([species, cover, need, planted]) => [property.name, zone.name, species, cover, need, planted ?? '']),
    ),
  ),
});

export const backflow = (world) => ({
  header: ['property', 'assembly', 'location', 'kind', 'last_tested_on', 'next_test_due_on'],
  rows: world.properties.flatMap((property) => (property.backflow ?? []).map((assembly) => [property.name, ...assembly])),
});
