import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** A thing of the organization by its name; retired ones too, for a file may name them again. */
export interface NamedRow {
  readonly id: string;
  readonly name: string;
  readonly retired: boolean;
}

export interface PropertyName extends NamedRow {
  readonly timeZone: string;
}

/** A thing with a name within its property. */
export interface OwnedName extends NamedRow {
  readonly propertyId: string;
}

export interface MeterName extends OwnedName {
  readonly unit: VolumeUnit;
  readonly multiplier: number;
}

export interface StationName extends NamedRow {
  readonly elevationM: number | null;
}

export interface ControllerName extends OwnedName {
  readonly stations: number;
  readonly startsPerProgram: number | null;
  readonly maxMinutes: number | null;
  readonly maxAdjustPercent: number | null;
  readonly adjustScope: 'controller' | 'program' | null;
}

/** Every name of the organization that files may use. */
export interface DirectoryRows {
  readonly timeZone: string;
  readonly clients: readonly NamedRow[];
  readonly stations: readonly StationName[];
  readonly suppliers: readonly NamedRow[];
  readonly properties: readonly PropertyName[];
  readonly meters: readonly MeterName[];
  readonly controllers: readonly ControllerName[];
  readonly zones: readonly OwnedName[];
}

const NAMED = 'id, name, retired_at is not null as retired';
const OWNED = `${NAMED}, property_id as "propertyId"`;

/** All SQL of names: a few columns of the kept things, read once before an import. */
export const directoryRows = {
  async all(tx: OrganizationTransaction): Promise<DirectoryRows> {
    const of = <Row>(table: string, columns: string): Promise<Row[]> =>
      tx.query<Row>(`select ${columns} from ${table} where organization_id = $1`, [tx.organizationId]);
    const [organization] = await tx.query<{ timeZone: string }>('select time_zone as "timeZone" from organization where id = $1', [
      tx.organizationId,
    ]);
    return {
      timeZone: organization!.timeZone,
      clients: await of<NamedRow>('client', NAMED),
      stations: await of<StationName>('weather_station', `${NAMED}, elevation_m as "elevationM"`),
      suppliers: await of<NamedRow>('water_supplier', NAMED),
      properties: await of<PropertyName>('property', `${NAMED}, time_zone as "timeZone"`),
      meters: await of<MeterName>('meter', `${OWNED}, unit, multiplier`),
      controllers: await of<ControllerName>(
        'controller',
        `${OWNED}, stations, starts_per_program as "startsPerProgram", max_minutes as "maxMinutes", max_adjust_percent as "maxAdjustPercent", adjust_scope as "adjustScope"`,
      ),
      zones: await of<OwnedName>('zone', OWNED),
    };
  },

  /** One import or export of an organization at a time, so that none sees half of another; false while another one runs. */
  async hold(tx: OrganizationTransaction, how: 'alone' | 'beside other readers'): Promise<boolean> {
    const lock = how === 'alone' ? 'pg_try_advisory_xact_lock' : 'pg_try_advisory_xact_lock_shared';
    const [answer] = await tx.query<{ held: boolean }>(`select ${lock}(hashtext('rillbook exchange'), hashtext($1)) as held`, [
      tx.organizationId,
    ]);
    return answer!.held;
  },
};
