import { setImmediate } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { Events } from '../../../platform/records/events.js';
import { pricesOf } from '../../portfolio/suppliers/prices.loader.js';
import { rulesOfSupplier } from '../../portfolio/suppliers/rules/rules-as-judged.loader.js';
import { PropertiesComputed } from '../accounts-computed.event.js';
import { EtoSeries } from '../gather/eto-series.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { monthAccounts } from '../months/month-account.repository.js';
import { type PropertyInputs, standingProperties } from '../standing/standing-properties.service.js';
import type { ComputingThreads } from './computing-threads.js';
import { type PropertyMonths, propertyMonths, type PropertyWork } from './property-months.js';

/** What the parts of one job share. */
export interface SharedInJob {
  /** series of stations by id: a change meanwhile asks for a job of its own */
  readonly series: Map<string, Promise<EtoSeries>>;
  /** null where the job's own thread computes */
  readonly threads: ComputingThreads | null;
  /** from what each property is computed; null where nobody has asked, as some were named */
  readonly inputs: ReadonlyMap<string, PropertyInputs> | null;
}

interface OwnSettings {
  readonly standsStillOn: string | null;
  readonly thresholds: Thresholds;
}

/** What an organization's own row says of its calendar and of what it wants to be told. */
const OWN_SETTINGS = `select stands_still_on::text as "standsStillOn", json_build_object('minConfidence', least_confidence, 'minLitres', least_litres, 'minMoney', least_money) as thresholds from organization where id = $1`;

/** Brings the accounts of some properties up to date, in few statements however many they are, and tells whoever listens. */
@Injectable()
export class RecomputeProperties {
  constructor(private readonly events: Events) {}

  /** Gives how many months were computed anew. */
  async run(tx: OrganizationTransaction, propertyIds: readonly string[], shared: SharedInJob): Promise<number> {
    const [own] = await tx.query<OwnSettings>(OWN_SETTINGS, [tx.organizationId]);
    const all = await propertyFacts.of(tx, propertyIds);
    const kept = await monthAccounts.keptMonths(tx, propertyIds);
    const series = await seriesOf(
      tx,
      all.map(({ property }) => property.stationId),
      shared.series,
    );
    const works: PropertyWork[] = [];
    for (const facts of all) {
      const { stationId, supplierId, timeZone, id } = facts.property;
      works.push({
        facts,
        eto: (stationId && series.get(stationId)) || EtoSeries.none,
        prices: await pricesOf(tx, supplierId),
        today: todayOf({ standsStillOn: own!.standsStillOn, timeZone }),
        judging: { thresholds: own!.thresholds, rules: supplierId ? await rulesOfSupplier(tx, supplierId) : [] },
        kept: kept.get(id) ?? new Map(),
      });
    }
    const done = await whileHeld(tx, async () => (await shared.threads?.compute(works)) ?? (await computedHere(works)));
    await monthAccounts.keepOnly(
      tx,
      all.map(({ property }) => property.id),
      done.flatMap(({ standing, event }) => standing.map((month) => ({ propertyId: event.propertyId, month }))),
    );
    await monthAccounts.insert(
      tx,
      done.flatMap(({ rows }) => rows),
    );
    await standingProperties.note(tx, propertyIds, shared.inputs);
    await this.events.emit(tx, new PropertiesComputed(done.map(({ event }) => event)));
    return done.reduce((sum, { renewed }) => sum + renewed, 0);
  }
}

/** Well within the time after which the database gives up a transaction that says nothing. [ms] */
const SAY_EVERY_MS = 20_000;

/** Work that asks the database for nothing, in a transaction that it must not take for forgotten: hours of many meters take their time. */
async function whileHeld<Done>(tx: OrganizationTransaction, work: () => Promise<Done>): Promise<Done> {
  let failed: unknown = null;
  const said = setInterval(() => void tx.query('select 1').catch((error: unknown) => (failed ??= error)), SAY_EVERY_MS);
  try {
    return await work();
  } finally {
    clearInterval(said);
    if (failed) throw failed;
  }
}

async function computedHere(works: readonly PropertyWork[]): Promise<PropertyMonths[]> {
  const done: PropertyMonths[] = [];
  for (const work of works) {
    // Requests have their turn between two properties.
    await setImmediate();
    done.push(propertyMonths(work));
  }
  return done;
}

/** The series of stations: those that nobody has asked for yet are read, all at once. */
async function seriesOf(
  tx: OrganizationTransaction,
  stationIds: readonly (string | null)[],
  known: SharedInJob['series'],
): Promise<ReadonlyMap<string, EtoSeries>> {
  const wanted = [...new Set(stationIds.filter((id) => id !== null))];
  for (const id of wanted) if (!known.has(id)) known.set(id, EtoSeries.of(tx, id));
  return new Map(await Promise.all(wanted.map(async (id) => [id, await known.get(id)!] as const)));
}
