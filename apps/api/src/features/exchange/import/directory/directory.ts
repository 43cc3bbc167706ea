import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { Known } from '../../drafts/known.js';
import { type DirectoryRows, directoryRows, type NamedRow, type OwnedName } from './directory.repository.js';
import { Ids } from './ids.js';

/** The names of an organization, as ids while an import is written, and as what its files may refer to. */
export class Directory {
  readonly clients = new Ids();
  readonly stations = new Ids();
  readonly suppliers = new Ids();
  readonly properties = new Ids();
  readonly meters = new Ids();
  readonly controllers = new Ids();
  readonly zones = new Ids();
  /** the lines of zones that only the database could refuse, by property and name */
  readonly refusedZones = new Map<string, number>();

  private constructor(private readonly rows: DirectoryRows) {
    const add = (ids: Ids, named: readonly (NamedRow | OwnedName)[]): void => {
      for (const row of named) ids.add(row.id, row.name, 'propertyId' in row ? row.propertyId : '');
    };
    add(this.clients, rows.clients);
    add(this.stations, rows.stations);
    add(this.suppliers, rows.suppliers);
    add(this.properties, rows.properties);
    add(this.meters, rows.meters);
    add(this.controllers, rows.controllers);
    add(this.zones, rows.zones);
  }

  static async of(tx: OrganizationTransaction): Promise<Directory> {
    return new Directory(await directoryRows.all(tx));
  }

  get timeZone(): string {
    return this.rows.timeZone;
  }

  /** What rows may refer to: things in use only. */
  known(): Known {
    const { timeZone, clients, stations, suppliers, properties, meters, controllers, zones } = this.rows;
    const names = new Map(inUse(properties).map((row) => [row.id, row.name]));
    const owned = <Row extends OwnedName>(rows: readonly Row[]): (Row & { readonly property: string })[] =>
      inUse(rows).flatMap((row) => (names.has(row.propertyId) ? [{ ...row, property: names.get(row.propertyId)! }] : []));
    return {
      timeZone,
      clients: inUse(clients).map((row) => row.name),
      stations: inUse(stations).map((row) => row.name),
      stationElevationsM: new Map(
        inUse(stations).flatMap(({ name, elevationM }) => (elevationM === null ? [] : [[name, elevationM] as const])),
      ),
      suppliers: inUse(suppliers).map((row) => row.name),
      properties: inUse(properties).map((row) => ({ property: row.name, timeZone: row.timeZone })),
      meters: owned(meters).map(({ property, name, unit, multiplier }) => ({ property, meter: name, unit, multiplier })),
      controllers: owned(controllers).map((row) => ({
        property: row.property,
        controller: row.name,
        stations: row.stations,
        startsPerProgram: row.startsPerProgram,
        maxMinutes: row.maxMinutes,
        maxAdjustPercent: row.maxAdjustPercent,
        adjustScope: row.adjustScope,
      })),
      zones: owned(zones).map(({ property, name }) => ({ property, zone: name })),
    };
  }
}

const inUse = <Row extends NamedRow>(rows: readonly Row[]): Row[] => rows.filter((row) => !row.retired);
