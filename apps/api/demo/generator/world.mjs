// From the written world to the living one: weather, needs, settings, runs and the water that really flowed.
import { needByDay } from './ground/soil-balance.mjs';
import { readZone } from './ground/zone.mjs';
import { flowThrough } from './meters/flow-through.mjs';
import { valleyWeather, weatherAt } from './sky/weather.mjs';
import { historyOf, plannedFor } from './timers/history.mjs';
import { MODELS } from './timers/models.mjs';
import { pausesOf } from './timers/pauses.mjs';
import { runsOf } from './timers/replay.mjs';
import { visitsOf } from './timers/visits.mjs';

const METER = { kind: 'irrigation', water: 'potable', unit: 'CCF', resolution: 0.1, digits: 6, sizeIn: 1.5, maxGpm: 100, psi: 60 };

function zoneOf(written, property, controller, station, meters) {
  const zone = readZone(written, property);
  const only = meters.filter((meter) => !meter.removed);
  zone.meter = zone.more.meter ?? controller?.meter ?? (only.length === 1 ? only[0].name : null);
  zone.assigned = meters.length > 1 || zone.meter === 'none';
  zone.controller = controller?.name ?? '';
  zone.station = station;
  zone.need = needByDay(zone, property.weather);
  return zone;
}

function withZones(property) {
  const meters = property.meters.map((meter) => ({ ...METER, ...meter }));
  const controllers = property.controllers.map((written) => {
    const controller = { history: {}, programs: property.programs, ...written, model: MODELS[written.model] };
    controller.zones = written.zones.map((zone, index) => zoneOf(zone, property, controller, index + 1, meters));
    return controller;
  });
  const byHand = (property.byHand ?? []).map((zone) => zoneOf(zone, property, null, '', meters));
  return { ...property, meters, controllers, zones: [...controllers.flatMap((controller) => controller.zones), ...byHand] };
}

function withHistory(property) {
  for (const controller of property.controllers) {
    controller.pauses = pausesOf(controller, property);
    controller.facts = historyOf(controller, property);
    const { planned } = controller.history;
    if (planned) controller.facts.push(plannedFor(controller, planned, '2026-09'));
  }
}

function liveProperty(written, weatherOfStation) {
  const property = withZones({ faults: [], ...written, weather: weatherOfStation.get(written.station) });
  property.weatherOf = new Map(property.weather.map((day) => [day.day, day]));
  property.visits = visitsOf(property);
  withHistory(property);
  property.runs = property.controllers.flatMap(runsOf);
  for (const meter of property.meters) {
    const stands = meter.removed ? property.meters.find((other) => other.installed === meter.removed) : meter;
    meter.flow = flowThrough({ ...meter, name: stands.name }, property);
  }
  return property;
}

/**
 * @param written a company's world, as the files in worlds/ hold it
 * @returns the same with everything that follows from it
 */
export function livingWorld(written) {
  const valley = valleyWeather(written.valley);
  const weatherOfStation = new Map(written.stations.map((station) => [station.name, weatherAt(station, valley)]));
  const properties = written.properties.map((property) => liveProperty(property, weatherOfStation));
  return { ...written, weatherOfStation, properties };
}
