import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { OrganizationChanged } from '../../../platform/identity/organizations/organization-changed.event.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { Events } from '../../../platform/records/events.js';
import { RecordChanged } from '../../../platform/records/record-changed.event.js';
import { ReadingRecorded } from '../../metering/reading-recorded.event.js';
import { PauseChanged, SettingsRecorded } from '../../settings/settings-recorded.event.js';
import { stationsFilledFrom } from '../../weather/series/stations-filled-from.service.js';
import { WeatherChanged } from '../../weather/weather-changed.event.js';
import { RECOMPUTE } from './recompute.job.js';

const TOUCHED = Symbol('touched properties');

/** Which properties' accounts a changed thing enters, as SQL that takes the organization and the thing's id. */
const PROPERTIES_OF: Readonly<Record<string, string>> = {
  property: 'select id from property where organization_id = $1 and id = $2',
  meter: 'select property_id as id from meter where organization_id = $1 and id = $2',
  controller: 'select property_id as id from controller where organization_id = $1 and id = $2',
  zone: 'select property_id as id from zone where organization_id = $1 and id = $2',
  planting:
    'select zone.property_id as id from planting join zone on zone.organization_id = planting.organization_id and zone.id = planting.zone_id where planting.organization_id = $1 and planting.id = $2',
  // A station that came, moved or went may be, or have been, the neighbour of any other.
  weather_station:
    'select id from property where organization_id = $1 and weather_station_id is not null and exists (select from weather_station where weather_station.organization_id = $1 and weather_station.id = $2)',
  water_supplier: 'select id from property where organization_id = $1 and water_supplier_id = $2',
  rate_tier:
    'select property.id from property join rate_tier on rate_tier.organization_id = property.organization_id and rate_tier.supplier_id = property.water_supplier_id where property.organization_id = $1 and rate_tier.id = $2',
};

/** Notes which properties' accounts no longer stand, and asks for their computation once, with the commit. */
@Injectable()
export class TouchAccounts implements OnModuleInit {
  constructor(
    private readonly events: Events,
    private readonly jobs: Jobs,
  ) {}

  onModuleInit(): void {
    this.events.on(RecordChanged, (tx, { thing, row }) => this.of(tx, thing, row.id));
    this.events.on(WeatherChanged, (tx, event) => this.ofWeather(tx, event.stationId));
    this.events.on(ReadingRecorded, (tx, { reading }) => this.of(tx, 'meter', reading.meterId));
    this.events.on(SettingsRecorded, (tx, event) => this.of(tx, 'controller', event.controllerId));
    // What opens a finding may have changed: accounts stay as they are and are judged again.
    this.events.on(OrganizationChanged, async (tx) => void (await this.jobs.ask(tx, RECOMPUTE, {})));
    this.events.on(PauseChanged, (tx, event) => this.of(tx, 'controller', event.controllerId));
  }

  /** The accounts of these properties no longer stand. */
  run(tx: OrganizationTransaction, propertyIds: readonly string[]): void {
    const touched = (tx.kept.get(TOUCHED) as Set<string> | undefined) ?? new Set<string>();
    for (const id of propertyIds) touched.add(id);
    tx.kept.set(TOUCHED, touched);
    if (touched.size) tx.beforeCommit('recompute', async () => void (await this.jobs.ask(tx, RECOMPUTE, { propertyIds: [...touched] })));
  }

  private async ofWeather(tx: OrganizationTransaction, stationId: string): Promise<void> {
    const rows = await tx.query<{ id: string }>(
      'select id from property where organization_id = $1 and weather_station_id = any($2::uuid[])',
      [tx.organizationId, await stationsFilledFrom(tx, [stationId])],
    );
    this.run(
      tx,
      rows.map((row) => row.id),
    );
  }

  private async of(tx: OrganizationTransaction, thing: string, id: string): Promise<void> {
    const sql = PROPERTIES_OF[thing];
    if (!sql) return;
    const rows = await tx.query<{ id: string }>(sql, [tx.organizationId, id]);
    this.run(
      tx,
      rows.map((row) => row.id),
    );
  }
}
