import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck } from './file-check.js';
import type { KnownController, KnownMeter } from '../drafts/known.js';
import type { Names, OwnedName, OwnName } from '../drafts/names.js';
import { referClient, referProperty, referZone } from '../drafts/refer.js';
import { keyPart, sameKeyCheck } from '../drafts/same-key.js';

/** Registers an accepted row's name, or remembers that its row was rejected. */
export function nameOrReject(row: DraftRow, names: Names, kind: OwnName | OwnedName, add: () => void): void {
  if (!row.rejected) {
    add();
    return;
  }
  const name = row.text(kind);
  const property = row.text('property');
  if (name === null) return;
  if (kind === 'meter' || kind === 'controller' || kind === 'zone') {
    if (property !== null) names.noteRejected(kind, [property, name], row.line);
  }
  names.noteRejected(kind, [name], row.line);
}

export function clientsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('client');
  return (row) => {
    const client = row.text('client');
    sameKey(row, [keyPart(client)]);
    nameOrReject(row, names, 'client', () => names.clients.add(client ?? ''));
  };
}

export function stationsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('station');
  return (row) => {
    const station = row.text('station');
    sameKey(row, [keyPart(station)]);
    nameOrReject(row, names, 'station', () => {
      names.stations.add(station ?? '');
      names.noteElevation(station ?? '', row.number('elevationM'));
    });
  };
}

export function propertiesCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property');
  return (row) => {
    const property = row.text('property');
    sameKey(row, [keyPart(property)]);
    referClient(row, names);
    bothOrNeither(row, ['latitude', 'latitude'], ['longitude', 'longitude']);
    const station = row.text('weatherStation');
    if (station !== null && !names.stations.has(station)) row.warn('STATION_NOT_KNOWN', { column: 'weather_station', found: station });
    if (row.text('allowanceFrom') === 'contract' && row.blank('allowanceLitresPerMonth'))
      row.warn('CONTRACT_WITHOUT_MONTHS', { column: 'allowance_gal_per_month' });
    nameOrReject(row, names, 'property', () => addProperty(row, names, property ?? ''));
  };
}

function addProperty(row: DraftRow, names: Names, property: string): void {
  // A file without the column leaves the zone of a property that is already there as it is.
  const before = row.given.has('time_zone') ? undefined : names.properties.get(property)?.timeZone;
  names.properties.set(property, { property, timeZone: row.text('timeZone') ?? before ?? names.timeZone });
  names.clients.add(row.text('client') ?? '');
  const supplier = row.text('waterSupplier');
  if (supplier !== null) names.suppliers.add(supplier);
}

/** Refuses a row that fills only one of two cells; each is given as field and column. */
export function bothOrNeither(row: DraftRow, first: readonly [string, string], second: readonly [string, string]): void {
  if (row.values[first[0]] === undefined || row.values[second[0]] === undefined) return;
  if (row.blank(first[0]) === row.blank(second[0])) return;
  const [missing, there] = row.blank(first[0]) ? [first, second] : [second, first];
  row.refuse('BOTH_OR_NEITHER', { column: missing[1], found: row.found(there[1]), expected: there[1] });
}

export function metersCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'meter');
  return (row) => {
    const [property, meter] = [row.text('property'), row.text('meter')];
    referProperty(row, names);
    sameKey(row, [keyPart(property), keyPart(meter)]);
    const [installed, removed] = [row.text('installedOn'), row.text('removedOn')];
    if (installed !== null && removed !== null && removed < installed)
      row.warn('SWAP_DATES', { column: 'removed_on', found: removed, expected: installed });
    if (row.number('lastRegister') !== null && row.blank('removedOn'))
      row.warn('REGISTER_WITHOUT_DATE', { column: 'last_register', found: row.found('last_register'), expected: 'removed_on' });
    if (row.number('firstRegister') !== null && row.blank('installedOn'))
      row.warn('REGISTER_WITHOUT_DATE', { column: 'first_register', found: row.found('first_register'), expected: 'installed_on' });
    nameOrReject(row, names, 'meter', () => {
      names.meter.add(property ?? '', meter ?? '', meterOf(row, names, property ?? '', meter ?? ''));
    });
  };
}

/** What the row says of the meter; a file without the column leaves the multiplier as it is known. */
function meterOf(row: DraftRow, names: Names, property: string, meter: string): KnownMeter {
  const multiplier = row.given.has('multiplier') ? row.number('multiplier') : names.meter.get(property, meter)?.multiplier;
  return { property, meter, unit: row.text('unit') as VolumeUnit, multiplier: multiplier ?? 1 };
}

export function controllersCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'controller');
  return (row) => {
    const [property, controller] = [row.text('property'), row.text('controller')];
    referProperty(row, names);
    sameKey(row, [keyPart(property), keyPart(controller)]);
    nameOrReject(row, names, 'controller', () => {
      names.controller.add(property ?? '', controller ?? '', controllerOf(row, names, property ?? '', controller ?? ''));
    });
  };
}

/** What the row says of the controller; columns that the file does not have stay as they are known. */
function controllerOf(row: DraftRow, names: Names, property: string, controller: string): KnownController {
  const known = names.controller.get(property, controller);
  const saysOr = <Value>(column: string, says: Value, before: Value | undefined): Value | null =>
    row.given.has(column) ? says : (before ?? null);
  return {
    property,
    controller,
    stations: row.number('stations') ?? 0,
    startsPerProgram: saysOr('starts_per_program', row.number('startsPerProgram'), known?.startsPerProgram),
    maxMinutes: saysOr('max_minutes', row.number('maxMinutes'), known?.maxMinutes),
    maxAdjustPercent: saysOr('max_adjust_percent', row.number('maxAdjustPercent'), known?.maxAdjustPercent),
    adjustScope: saysOr('adjust_scope', row.text('adjustScope') as KnownController['adjustScope'], known?.adjustScope),
  };
}

export function plantingsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'zone', 'species');
  return (row) => {
    referZone(row, names);
    sameKey(row, [keyPart(row.text('property')), keyPart(row.text('zone')), keyPart(row.text('species'))]);
  };
}
