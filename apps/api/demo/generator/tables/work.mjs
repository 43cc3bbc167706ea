// What crews, feeds and suppliers wrote down.
import { instantText } from '../sky/calendar.mjs';
import { billRows, usageRows } from '../meters/feeds-and-bills.mjs';
import { readingRows } from '../meters/registers.mjs';
import { pauseRows } from '../timers/pauses.mjs';

function factRows(property, controller, fact) {
  const head = [property.name, controller.name, instantText(fact.at), fact.record, fact.state];
  if (fact.state !== 'on') return [[...head, '', '', '', '', '', '', '', '']];
  return Object.entries(fact.programs).flatMap(([name, program]) =>
    program.stations.map(({ station, minutes, cycles, soak }) => [
      ...head,
      ...[name, program.days, program.starts, fact.percents[name], station, minutes, cycles > 1 ? cycles : '', cycles > 1 ? soak : ''],
    ]),
  );
}

function controllerRows(property, controller) {
  if (controller.known === false) {
    return controller.unknownAt.map((at) => [property.name, controller.name, at, 'found', 'unknown', '', '', '', '', '', '', '', '']);
  }
  return controller.facts.flatMap((fact) => factRows(property, controller, fact));
}

export const settings = (world) => ({
  header: [
    ...['property', 'controller', 'effective_at', 'record', 'state', 'program', 'days', 'starts', 'adjust_percent'],
    ...['station', 'minutes', 'cycles', 'soak_min'],
  ],
  rows: world.properties.flatMap((property) => property.controllers.flatMap((controller) => controllerRows(property, controller))),
});

export const pauses = (world) => ({
  header: ['property', 'controller', 'paused_from', 'paused_until'],
  rows: world.properties.flatMap((property) => property.controllers.flatMap((controller) => pauseRows(property, controller))),
});

const byMeter = (world, rowsOf) => world.properties.flatMap((property) => property.meters.flatMap((meter) => rowsOf(meter, property)));

export const readings = (world) => ({
  header: ['property', 'meter', 'read_at', 'register', 'source', 'note'],
  rows: byMeter(world, readingRows),
});

export const usage = (world) => ({
  header: ['property', 'meter', 'start', 'end', 'volume', 'unit'],
  rows: byMeter(world, usageRows),
});

export const bills = (world) => ({
  header: ['property', 'meter', 'start', 'end', 'end_included', 'volume', 'unit', 'amount'],
  rows: byMeter(world, (meter, property) =>
    billRows(
      meter,
      property,
      world.suppliers.find((supplier) => supplier.name === property.supplier),
    ),
  ),
});
