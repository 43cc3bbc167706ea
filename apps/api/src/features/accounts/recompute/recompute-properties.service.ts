import { setImmediate } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { Events } from '../../../platform/records/events.js';
import { pricesOf } from '../../portfolio/suppliers/prices.loader.js';
import { PropertiesComputed } from '../accounts-computed.event.js';
import { EtoSeries } from '../gather/eto-series.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { monthAccounts } from '../months/month-account.repository.js';
import { type PropertyMonths, propertyMonths } from './property-months.js';

/** Series of stations by id, kept for the length of a job: a change meanwhile asks for a job of its own. */
export type SeriesOfStations = Map<string, EtoSeries>;

/** Brings the accounts of some properties up to date, in few statements however many they are, and tells whoever listens. */
@Injectable()
export class RecomputeProperties {
  constructor(private readonly events: Events) {}

  /** Gives how many months were computed anew. */
  async run(tx: OrganizationTransaction, propertyIds: readonly string[], series: SeriesOfStations): Promise<number> {
    const [clock] = await tx.query<{ timeZone: string; standsStillOn: string | null }>(
      'select time_zone as "timeZone", stands_still_on::text as "standsStillOn" from organization where id = $1',
      [tx.organizationId],
    );
    const all = await propertyFacts.of(tx, propertyIds);
    const kept = await monthAccounts.keptMonths(tx, propertyIds);
    await addSeries(
      tx,
      all.map(({ property }) => property.stationId),
      series,
    );
    const done: PropertyMonths[] = [];
    for (const facts of all) {
      const { stationId, supplierId, timeZone, id } = facts.property;
      // Requests have their turn between two properties.
      await setImmediate();
      done.push(
        propertyMonths({
          facts,
          eto: (stationId && series.get(stationId)) || EtoSeries.none,
          prices: await pricesOf(tx, supplierId),
          today: todayOf({ standsStillOn: clock!.standsStillOn, timeZone }),
          kept: kept.get(id) ?? new Map(),
        }),
      );
    }
    await monthAccounts.keepOnly(
      tx,
      all.map(({ property }) => property.id),
      done.flatMap(({ standing, event }) => standing.map((month) => ({ propertyId: event.propertyId, month }))),
    );
    await monthAccounts.insert(
      tx,
      done.flatMap(({ rows }) => rows),
    );
    await this.events.emit(tx, new PropertiesComputed(done.map(({ event }) => event)));
    return done.reduce((sum, { renewed }) => sum + renewed, 0);
  }
}

/** Reads the series of stations that are not known yet, all at once. */
async function addSeries(tx: OrganizationTransaction, stationIds: readonly (string | null)[], series: SeriesOfStations): Promise<void> {
  const wanted = new Set(stationIds.filter((id) => id !== null && !series.has(id)) as string[]);
  await Promise.all([...wanted].map(async (id) => series.set(id, await EtoSeries.of(tx, id))));
}
