import { randomUUID } from 'node:crypto';
import type { TestDatabase } from './test-database.js';

/** Where a builder inserts: a test's database, through the administrator. */
type Admin = Pick<TestDatabase, 'admin'>;
/** Columns of the table, by their names in the database. */
type Columns = Readonly<Record<string, unknown>>;

/** Rows of tables that are read back as they were inserted, defaults of the database included. */
export interface Built {
  readonly id: string;
  readonly organization_id: string;
  // biome-ignore lint/suspicious/noExplicitAny: the columns are the table's own
  readonly [column: string]: any;
}

let counted = 0;
const next = (word: string): string => `${word} ${(counted += 1)}`;

/** Inserts one row; objects (not arrays) go as JSON. */
export async function insertRow(database: Admin, table: string, columns: Columns): Promise<Built> {
  const names = Object.keys(columns);
  const values = Object.values(columns).map((value) =>
    value !== null && typeof value === 'object' && !Array.isArray(value) && !(value instanceof Date) && !Buffer.isBuffer(value)
      ? JSON.stringify(value)
      : value,
  );
  const [row] = await database.admin<Built>(
    `insert into ${table} (${names.join(', ')}) values (${names.map((_, index) => `$${index + 1}`).join(', ')}) returning *`,
    values,
  );
  return row!;
}

export const aClient = (database: Admin, organizationId: string, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'client', { organization_id: organizationId, name: next('Client'), ...columns });

/** A property; its client is made unless `client_id` is given. */
export async function aProperty(database: Admin, organizationId: string, columns: Columns = {}): Promise<Built> {
  const client_id = columns['client_id'] ?? (await aClient(database, organizationId)).id;
  return insertRow(database, 'property', {
    organization_id: organizationId,
    name: next('Property'),
    time_zone: 'America/Los_Angeles',
    ...columns,
    client_id,
  });
}

/** What stands on a property. */
const on =
  (table: string, defaults: () => Columns) =>
  (database: Admin, property: Built, columns: Columns = {}): Promise<Built> =>
    insertRow(database, table, {
      organization_id: property.organization_id,
      property_id: property.id,
      name: next(table),
      ...defaults(),
      ...columns,
    });

/** A meter that counts hundreds of cubic feet, six digits. */
export const aMeter = on('meter', () => ({ unit: 'CCF', digits: 6, resolution: 1 }));

export const aController = on('controller', () => ({ stations: 12, programs: 4, starts_per_program: 4 }));

/** A zone of 500 m² of spray on cool-season turf; hand it `controller_id` with `station`, and `meter_id`. */
export const aZone = on('zone', () => ({ area_m2: 500, plants: 'turf cool-season', method: 'spray', precip_mm_per_h: 40 }));

export const aBackflowAssembly = on('backflow_assembly', () => ({}));

export const aPlanting = (database: Admin, zone: Built, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'planting', { organization_id: zone.organization_id, zone_id: zone.id, species: next('Species'), ...columns });

export const aWeatherStation = (database: Admin, organizationId: string, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'weather_station', {
    organization_id: organizationId,
    name: next('Station'),
    latitude: 38.5,
    longitude: -121.7,
    elevation_m: 18,
    ...columns,
  });

/** A day with temperatures and rain 0. */
export const aWeatherDay = (database: Admin, station: Built, columns: Columns & { readonly day: string }): Promise<Built> =>
  insertRow(database, 'weather_day', {
    organization_id: station.organization_id,
    station_id: station.id,
    tmax_c: 30,
    tmin_c: 14,
    rain_mm: 0,
    ...columns,
  });

export const aWaterSupplier = (database: Admin, organizationId: string, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'water_supplier', { organization_id: organizationId, name: next('Supplier'), ...columns });

export const aRateTier = (database: Admin, supplier: Built, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'rate_tier', {
    organization_id: supplier.organization_id,
    supplier_id: supplier.id,
    effective_from: '2026-01-01',
    tier: 1,
    unit: 'CCF',
    price: 4,
    ...columns,
  });

export const aWateringRule = (database: Admin, supplier: Built, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'watering_rule', {
    organization_id: supplier.organization_id,
    supplier_id: supplier.id,
    name: next('Rule'),
    ...columns,
  });

export const aCrew = (database: Admin, organizationId: string, columns: Columns = {}): Promise<Built> =>
  insertRow(database, 'crew', { organization_id: organizationId, name: next('Crew'), ...columns });

/** Makes a member (see `somebody(...).memberId`) one of a crew. */
export const inCrew = (database: Admin, crew: Built, memberId: string): Promise<Built> =>
  insertRow(database, 'crew_member', { organization_id: crew.organization_id, crew_id: crew.id, member_id: memberId });

/** A crew's stop at a property on a day; the route is made, or found when the crew has one that day. */
export async function aStop(
  database: Admin,
  crew: Built,
  property: Built,
  columns: Columns & { readonly day?: string } = {},
): Promise<Built> {
  const { day = '2026-07-06', ...rest } = columns;
  const [present] = await database.admin<Built>('select * from route where organization_id = $1 and crew_id = $2 and day = $3', [
    crew.organization_id,
    crew.id,
    day,
  ]);
  const route = present ?? (await insertRow(database, 'route', { organization_id: crew.organization_id, crew_id: crew.id, day }));
  const [last] = await database.admin<{ position: number }>(
    'select coalesce(max(position), 0)::integer as position from stop where organization_id = $1 and route_id = $2',
    [crew.organization_id, route.id],
  );
  return insertRow(database, 'stop', {
    organization_id: crew.organization_id,
    route_id: route.id,
    property_id: property.id,
    position: last!.position + 1,
    ...rest,
  });
}

/** A reading of a meter's register. */
export const aReading = (
  database: Admin,
  meter: Built,
  columns: Columns & { readonly read_at: string; readonly register: number },
): Promise<Built> => insertRow(database, 'reading', { organization_id: meter.organization_id, meter_id: meter.id, ...columns });

/** Settings of a controller, as found, on, without programs unless given (JSON text for arrays). */
export const someSettings = (database: Admin, controller: Built, columns: Columns = {}): Promise<Built> => {
  const programs = Array.isArray(columns['programs']) ? JSON.stringify(columns['programs']) : (columns['programs'] ?? '[]');
  return insertRow(database, 'settings', {
    organization_id: controller.organization_id,
    controller_id: controller.id,
    effective_at: '2026-06-01T12:00:00Z',
    record: 'found',
    state: 'on',
    device_record_id: randomUUID(),
    ...columns,
    programs,
  });
};
