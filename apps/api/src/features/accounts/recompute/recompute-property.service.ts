import { Injectable } from '@nestjs/common';
import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Events } from '../../../platform/records/events.js';
import { type Prices, pricesOf } from '../../portfolio/suppliers/prices.loader.js';
import { AccountsComputed, type ComputedMonth } from '../accounts-computed.event.js';
import { accountInput, type MeteredChain } from '../gather/account-input.js';
import { EtoSeries } from '../gather/eto-series.js';
import { meterChains } from '../gather/meter-chains.js';
import { type DoubtfulReading, meteredIntervals } from '../gather/metered-intervals.js';
import { litresPerMmOf, zoneInput } from '../gather/zone-input.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { monthAccounts } from '../months/month-account.repository.js';
import type { MonthAccountRow } from '../months/month-account.entity.js';
import { accountRows } from './account-rows.js';
import { inputsVersion } from './inputs-version.js';
import { monthsToCompute } from './months-to-compute.js';
import { newestFacts } from './newest-facts.js';
import { winterLitresPerDay } from './winter-share.js';

/** Computes the month accounts of one property, those only whose inputs differ from what they were computed from. */
@Injectable()
export class RecomputeProperty {
  constructor(private readonly events: Events) {}

  /**
   * Brings the property's accounts up to date and tells whoever listens.
   *
   * @param today the organization's local date
   * @returns how many months were computed anew
   */
  async run(tx: OrganizationTransaction, facts: PropertyFacts, today: string): Promise<number> {
    const eto = await etoOf(tx, facts.property.stationId);
    const chains = meterChains(facts.meters);
    const litresPerMm = litresPerMmOf(facts.zones.map((zone) => zoneInput(zone, (meterId) => meterId, null)));
    const measured = chains.map((chain) => ({ chain, ...meteredIntervals(chain, facts, { eto, litresPerMm }) }));
    const months = monthsToCompute(facts, eto, today);
    const kept = new Map(
      ((await monthAccounts.ofProperties(tx, [facts.property.id])).get(facts.property.id) ?? [])
        .filter((row) => row.meterId === null)
        .map((row) => [row.month.slice(0, 7), row]),
    );
    const prices = await pricesOf(tx, facts.property.supplierId);
    const done: ComputedMonth[] = [];
    let renewed = 0;
    for (const month of months) {
      const metered: MeteredChain[] = measured.map(({ chain, intervals }) => ({
        chain,
        intervals,
        winterLitresPerDay: winterLitresPerDay(intervals, done),
      }));
      const input = accountInput(facts, metered, eto, month, today);
      const version = inputsVersion([input, prices.inForce(month), facts.meters.map((meter) => meter.pricePerUnit)]);
      const present = kept.get(month);
      if (present?.inputsVersion === version) {
        done.push(asKept(month, present));
        continue;
      }
      done.push(await this.compute(tx, facts, input, { version, prices }));
      renewed += 1;
    }
    await monthAccounts.keepOnly(tx, facts.property.id, months);
    await this.events.emit(
      tx,
      new AccountsComputed(
        facts.property.id,
        today,
        done,
        measured.flatMap((part): DoubtfulReading[] => part.doubtful),
        newestFacts(facts),
      ),
    );
    return renewed;
  }

  private async compute(
    tx: OrganizationTransaction,
    facts: PropertyFacts,
    input: AccountInput,
    how: { version: string; prices: Prices },
  ): Promise<ComputedMonth> {
    const account = computeMonthAccount(input);
    const propertyId = facts.property.id;
    const { metered, allowed } = account.property;
    // A litre less is a litre of the tier that the month's water ends in.
    const at = metered.litres === null ? null : { litres: metered.litres, allowedLitres: allowed.litres };
    const price = how.prices.marginalPerLitre(input.month, facts.meters, at);
    const covered = input.days.filter(
      (day) => day.date >= account.firstDate && account.throughDate !== null && day.date <= account.throughDate,
    );
    const whole = covered.length === account.daysCovered;
    const sum = (of: (day: AccountInput['days'][number]) => number | null): number | null =>
      whole ? covered.reduce<number | null>((total, day) => (total === null || of(day) === null ? null : total + of(day)!), 0) : null;
    const frame = {
      organizationId: tx.organizationId,
      propertyId,
      version: how.version,
      pricePerLitre: price,
      etoMm: sum((day) => day.etoMm),
      rainMm: sum((day) => day.rainMm),
    };
    await monthAccounts.replace(tx, propertyId, input.month, accountRows(frame, account));
    return { month: input.month, account, pricePerLitre: price };
  }
}

const asKept = (month: string, row: MonthAccountRow): ComputedMonth => ({
  month,
  account: row.detail.account,
  pricePerLitre: row.detail.pricePerLitre,
});

const SERIES = Symbol('eto series');

/** A station's series, computed once in a transaction however many properties stand under it. */
async function etoOf(tx: OrganizationTransaction, stationId: string | null): Promise<EtoSeries> {
  if (!stationId) return EtoSeries.none;
  const series = (tx.kept.get(SERIES) ?? new Map()) as Map<string, EtoSeries>;
  tx.kept.set(SERIES, series);
  const present = series.get(stationId) ?? (await EtoSeries.of(tx, stationId));
  series.set(stationId, present);
  return present;
}
