import { nameKey } from '../columns/text-cells.js';
import { keyOf } from './key-table.js';
import type { Known, KnownController, KnownMeter, KnownProperty, KnownZone } from './known.js';

/** Things with a name of their own in the organization. */
export type OwnName = 'client' | 'station' | 'supplier' | 'property';
/** Things with a name within their property. */
export type OwnedName = 'meter' | 'controller' | 'zone';

/** Things by property and name, and by name alone: nearly every property has a controller 'A'. */
class Owned<Thing> {
  private readonly byProperty = new Map<string, Map<string, Thing>>();
  private readonly byName = new Map<string, Set<string>>();

  add(property: string, name: string, thing: Thing): void {
    const things = this.byProperty.get(property) ?? new Map<string, Thing>();
    this.byProperty.set(property, things.set(name, thing));
    this.byName.set(name, (this.byName.get(name) ?? new Set()).add(property));
  }

  /** Everything, or everything of a property. */
  all(property: string | null = null): readonly Thing[] {
    const places = property === null ? [...this.byProperty.values()] : [this.byProperty.get(property) ?? new Map<string, Thing>()];
    return places.flatMap((things) => [...things.values()]);
  }

  get(property: string, name: string): Thing | undefined {
    return this.byProperty.get(property)?.get(name);
  }

  /** The properties that have a thing of that name. */
  propertiesWith(name: string): readonly string[] {
    return [...(this.byName.get(name) ?? [])];
  }
}

/** Every name that a row may refer to: those of the organization, and those of accepted rows of the same import. */
export class Names {
  readonly timeZone: string;
  readonly clients: Set<string>;
  readonly stations: Set<string>;
  /** [m] */
  private readonly elevations = new Map<string, number>();
  readonly suppliers: Set<string>;
  readonly properties = new Map<string, KnownProperty>();
  readonly meter = new Owned<KnownMeter>();
  readonly controller = new Owned<KnownController>();
  readonly zone = new Owned<KnownZone>();
  private readonly rejected = new Map<string, number>();

  constructor(known: Known) {
    this.timeZone = known.timeZone;
    this.clients = new Set([...known.clients].map(nameKey));
    this.stations = new Set([...known.stations].map(nameKey));
    for (const [station, elevationM] of known.stationElevationsM ?? []) this.elevations.set(nameKey(station), elevationM);
    this.suppliers = new Set([...known.suppliers].map(nameKey));
    for (const property of known.properties) this.properties.set(nameKey(property.property), property);
    for (const meter of known.meters) this.meter.add(nameKey(meter.property), nameKey(meter.meter), meter);
    for (const controller of known.controllers)
      this.controller.add(nameKey(controller.property), nameKey(controller.controller), controller);
    for (const zone of known.zones) this.zone.add(nameKey(zone.property), nameKey(zone.zone), zone);
  }

  /** The time zone of a property; the organization's for one that is not known, whose row is rejected anyway. */
  zoneOf(property: string): string {
    return this.properties.get(property)?.timeZone ?? this.timeZone;
  }

  /** The height of a station above the sea, null where it is not known. [m] */
  elevationOf(station: string): number | null {
    return this.elevations.get(nameKey(station)) ?? null;
  }

  noteElevation(station: string, elevationM: number | null): void {
    if (elevationM !== null) this.elevations.set(nameKey(station), elevationM);
  }

  /** Remembers the line of a rejected row, so that those who name it can be told why. */
  noteRejected(kind: OwnName | OwnedName, parts: readonly string[], line: number): void {
    const key = keyOf(kind, ...parts);
    if (!this.rejected.has(key)) this.rejected.set(key, line);
  }

  rejectedLine(kind: OwnName | OwnedName, parts: readonly string[]): number | null {
    return this.rejected.get(keyOf(kind, ...parts)) ?? null;
  }
}
