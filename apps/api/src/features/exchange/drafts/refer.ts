import type { DraftRow } from './draft-row.js';
import type { KnownController, KnownMeter, KnownProperty, KnownZone } from './known.js';
import type { Names, OwnedName, OwnName } from './names.js';

const FILE_OF: Readonly<Record<OwnName | OwnedName, string>> = {
  client: 'clients.csv',
  station: 'stations.csv',
  supplier: 'properties.csv',
  property: 'properties.csv',
  meter: 'meters.csv',
  controller: 'controllers.csv',
  zone: 'zones.csv',
};

/** A thing that a row names, and the property it stands on. */
export interface Referred<Thing> {
  readonly thing: Thing;
  readonly property: string;
}

/** The property that a row must name; a problem where there is none. */
export function referProperty(row: DraftRow, names: Names): KnownProperty | null {
  const property = row.text('property');
  if (property === null) return null;
  const known = names.properties.get(property);
  if (known) return known;
  refuseUnknown(row, names, 'property', [property]);
  return null;
}

/** The meter that a row names, with or without its property. */
export function referMeter(row: DraftRow, names: Names): Referred<KnownMeter> | null {
  return referOwned(row, names, 'meter', names.meter);
}

/** The controller that a row names, with or without its property. */
export function referController(row: DraftRow, names: Names): Referred<KnownController> | null {
  return referOwned(row, names, 'controller', names.controller);
}

/** The zone that a row names, in its property. */
export function referZone(row: DraftRow, names: Names): Referred<KnownZone> | null {
  return referOwned(row, names, 'zone', names.zone);
}

interface Lookup<Thing> {
  get(property: string, name: string): Thing | undefined;
  propertiesWith(name: string): readonly string[];
}

function referOwned<Thing>(row: DraftRow, names: Names, kind: OwnedName, things: Lookup<Thing>): Referred<Thing> | null {
  const name = row.text(kind);
  // Where the cell could not be read, that is the problem already.
  if (name === null || row.values['property'] === undefined) return null;
  const property = row.text('property');
  if (property === null) return referByNameAlone(row, names, kind, things);
  if (!referProperty(row, names)) return null;
  const thing = things.get(property, name);
  if (thing) return { thing, property };
  refuseUnknown(row, names, kind, [property, name]);
  return null;
}

function referByNameAlone<Thing>(row: DraftRow, names: Names, kind: OwnedName, things: Lookup<Thing>): Referred<Thing> | null {
  const name = row.text(kind) ?? '';
  const properties = things.propertiesWith(name);
  const property = properties[0];
  const thing = property === undefined ? undefined : things.get(property, name);
  if (property === undefined || thing === undefined) {
    refuseUnknown(row, names, kind, [name]);
    return null;
  }
  if (properties.length > 1) {
    row.refuse('AMBIGUOUS_NAME', { column: 'property', found: properties.join(', '), expected: name });
    return null;
  }
  row.values['property'] = property;
  return { thing, property };
}

function refuseUnknown(row: DraftRow, names: Names, kind: OwnName | OwnedName, parts: readonly string[]): void {
  const found = parts.at(-1) ?? '';
  const otherLine = names.rejectedLine(kind, parts);
  if (otherLine !== null) row.refuse('NAME_REJECTED', { column: kind, found, expected: FILE_OF[kind], otherLine });
  else
    row.refuse('UNKNOWN_NAME', {
      column: kind,
      found,
      expected: parts.length > 1 ? `(${parts[0]}; ${FILE_OF[kind]})` : `(${FILE_OF[kind]})`,
    });
}

/** The weather station that a row of weather must name. */
export function referStation(row: DraftRow, names: Names): void {
  const station = row.text('station');
  if (station !== null && !names.stations.has(station)) refuseUnknown(row, names, 'station', [station]);
}

/** The client that a property names: a new one is made by naming it, unless its own row was rejected. */
export function referClient(row: DraftRow, names: Names): void {
  const client = row.text('client');
  if (client === null || names.clients.has(client)) return;
  if (names.rejectedLine('client', [client]) !== null) refuseUnknown(row, names, 'client', [client]);
  else row.warn('CLIENT_CREATED', { column: 'client', found: client });
}
