import { dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountFacts } from '@rillbook/metering/account/account-input.js';
import { accountOfMonth } from '@rillbook/metering/account/compute-month-account.js';
import { accountInColumns } from '@rillbook/metering/columns/account-in-columns.js';
import { accountOfColumns } from '@rillbook/metering/columns/account-of-columns.js';
import { type PreparedMonth, preparedMonths } from '@rillbook/metering/account/needed/prepared-months.js';
import { type JudgedMonth, judgedMonth } from '@rillbook/metering/detection/episodes/judged-month.js';
import type { Prices } from '../../portfolio/suppliers/prices-of-tiers.service.js';
import { AccountsComputed, type ComputedMonth, type NewestFacts } from '../accounts-computed.event.js';
import { accountInputs, type MonthInput } from '../gather/account-input.js';
import type { EtoSeries } from '../gather/eto-series.js';
import { type MeasuredChain, measuredChains } from '../evidence/measured-chains.js';
import type { DaySpan } from '../evidence/property-calendar.js';
import { type PropertyReplays, propertyReplays } from '../evidence/property-replays.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { type Judging, propertyEpisodes } from '../judging/property-episodes.js';
import type { KeptMonth, NewAccount } from '../months/month-account.repository.js';
import { unpacked } from '../months/packed-value.js';
import { accountRows, columnRow } from './account-rows.js';
import { inputsVersion } from './inputs-version.js';
import { monthsToCompute } from './months-to-compute.js';
import { newestFacts } from './newest-facts.js';
import { winterLitresPerDay } from './winter-share.js';

/** A property, and what its accounts are computed with. */
export interface PropertyWork {
  readonly facts: PropertyFacts;
  readonly eto: EtoSeries;
  readonly prices: Prices;
  /** the organization's local date */
  readonly today: string;
  readonly judging: Pick<Judging, 'thresholds' | 'rules'>;
  /** by month */
  readonly kept: ReadonlyMap<string, KeptMonth>;
}

/** A property's accounts as they should be kept. */
export interface PropertyMonths {
  /** months, as 'YYYY-MM', whose accounts stand as they are kept */
  readonly standing: readonly string[];
  /** accounts to be kept in the place of all others */
  readonly rows: readonly NewAccount[];
  /** how many months were computed anew */
  readonly renewed: number;
  readonly event: AccountsComputed;
}

/** The month accounts of one property: those are computed whose inputs differ from what they were computed from. */
export function propertyMonths(work: PropertyWork): PropertyMonths {
  const { facts, eto, today } = work;
  const measured = measuredChains(facts, eto);
  const intervalsOf = new Map(measured.map(({ chain, intervals }) => [chain.id, intervals]));
  const inputs = monthsToCompute(facts, eto, today).map(accountInputs(facts, measured, eto, today));
  const replays = replaying(inputs, work);
  const prepare = preparing(inputs, eto, replays);
  const done: ComputedMonth[] = [];
  const standing: string[] = [];
  const rows: NewAccount[] = [];
  inputs.forEach((each, at) => {
    const input = withWinter(each, intervalsOf, done);
    const version = versionOf(input, work);
    const present = work.kept.get(input.month);
    if (present?.version === version) {
      standing.push(input.month);
      done.push(asKept(input.month, present));
      return;
    }
    const { computed, kept } = computedMonth(work, input, prepare(at), version);
    done.push(computed);
    rows.push(...kept);
  });
  const newest = newestFacts(facts);
  const event = new AccountsComputed(
    facts.property.id,
    facts.property.timeZone,
    episodesOf(work, { measured, newest, replays }, done),
    newest,
  );
  return { standing, rows, renewed: inputs.length - standing.length, event };
}

interface Known {
  readonly measured: readonly MeasuredChain[];
  readonly newest: NewestFacts;
  readonly replays: () => PropertyReplays;
}

function episodesOf(
  work: PropertyWork,
  { measured, newest, replays }: Known,
  done: readonly ComputedMonth[],
): AccountsComputed['episodes'] {
  const { facts, eto, prices, today, judging } = work;
  const property = {
    ...{ facts, eto, measured, newest, replays },
    pricePerLitre: done.at(-1)?.pricePerLitre ?? prices.marginalPerLitre(today.slice(0, 'YYYY-MM'.length), facts.meters),
    read: measured.flatMap(({ read }) => read),
    months: done.map(({ judged }) => judged),
  };
  return propertyEpisodes(property, { ...judging, today });
}

/** An account that is kept is unpacked when somebody asks for it. */
function asKept(month: string, { detail, judged }: KeptMonth): ComputedMonth {
  let known: ReturnType<KeptMonth['detail']> | undefined;
  const kept = () => (known ??= detail());
  return {
    month,
    get account() {
      return kept().account;
    },
    get pricePerLitre() {
      return kept().pricePerLitre;
    },
    get judged() {
      return judged ? (unpacked(judged) as JudgedMonth) : judgedMonth(kept().account, kept().pricePerLitre);
    },
  };
}

/** The settings from the first month to today and in each month, when somebody asks for them. */
function replaying(inputs: readonly MonthInput[], { facts, eto, today }: PropertyWork): () => PropertyReplays {
  let known: PropertyReplays | undefined;
  return () => (known ??= propertyReplays(facts, eto, spanUntil(inputs, today), inputs.map(coveredSpan)));
}

function spanUntil(inputs: readonly MonthInput[], today: string): DaySpan {
  const { firstDay } = daysOfMonth(inputs[0]!.month);
  return { firstDay, days: dayNumberOfDate(today) - firstDay + 1 };
}

function coveredSpan({ month, through }: MonthInput): DaySpan {
  const { firstDay } = daysOfMonth(month);
  return { firstDay, days: through === null ? 0 : dayNumberOfDate(through) - firstDay + 1 };
}

/** From the first month that is asked for on, what the zones needed is computed for all of them at once. */
function preparing(inputs: readonly MonthInput[], eto: EtoSeries, replays: () => PropertyReplays): (at: number) => PreparedMonth {
  let from = 0;
  let prepared: readonly PreparedMonth[] | null = null;
  return (at) => {
    if (!prepared) {
      from = at;
      prepared = preparedMonths(inputs.slice(at), eto.weather);
    }
    const { covered, depths } = prepared[at - from]!;
    return { covered, depths, replays: replays().ofSpan(at) };
  };
}

function withWinter(
  input: MonthInput,
  intervalsOf: ReadonlyMap<string, AccountFacts['meters'][number]['intervals']>,
  done: readonly ComputedMonth[],
): MonthInput {
  if (input.meters.every((meter) => meter.kind === 'irrigation' || meter.indoorLitresPerDay !== null)) return input;
  const meters = input.meters.map((meter) => ({ ...meter, winterLitresPerDay: winterLitresPerDay(intervalsOf.get(meter.id) ?? [], done) }));
  return { ...input, meters };
}

function versionOf(input: MonthInput, { facts, prices }: PropertyWork): string {
  const { month, through, weatherVersion, clockChanges, allowance, zones, controllers, meters } = input;
  const price = [prices.inForce(month), facts.meters.map((meter) => meter.pricePerUnit)];
  return inputsVersion([month, through, weatherVersion, clockChanges, price, meters], [allowance, zones, controllers]);
}

function computedMonth(work: PropertyWork, input: MonthInput, prepared: PreparedMonth, version: string) {
  const { facts, eto, prices } = work;
  const columns = accountInColumns(input, prepared);
  const account = columns ? accountOfColumns(columns) : accountOfMonth(input, prepared);
  const { metered, allowed } = account.property;
  // A litre less is a litre of the tier that the month's water ends in.
  const at = metered.litres === null ? null : { litres: metered.litres, allowedLitres: allowed.litres };
  const pricePerLitre = prices.marginalPerLitre(input.month, facts.meters, at);
  const { firstDay, days } = prepared.covered;
  const frame = {
    propertyId: facts.property.id,
    version,
    pricePerLitre,
    etoMm: eto.sumOf('etoMm', firstDay, days),
    rainMm: eto.sumOf('rainMm', firstDay, days),
  };
  const judged = judgedMonth(account, pricePerLitre);
  return {
    computed: { month: input.month, account, pricePerLitre, judged },
    kept: columns ? [columnRow(frame, columns, judged)] : accountRows(frame, account, judged),
  };
}
