import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';
import type { CardMonth, YearCard as Card } from '@rillbook/irrigation/planning/offers/year-card.js';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { keepProgram } from '../../settings/programs/keep-program.service.js';
import { showProgram } from '../../settings/programs/program.type.js';
import { stationSeriesOf } from '../../weather/series/station-series.loader.js';
import { gatherPlan, type Gathered, type PlannableController } from '../gather/plan-input.service.js';
import { planner } from '../offers/planner.js';
import { frostMonths } from './frost-record.js';
import { FrostRecord, YearCard, YearCardMonth } from './year-card.type.js';

const MONTHS = 12;
const HALF = 0.5;

/** The card that stays in a controller's cabinet. */
@Resolver(() => Controller)
export class YearCardResolver {
  /** the month that is under way and the eleven that follow; null for who does not read the portfolio */
  @ResolveField(() => YearCard, { nullable: true })
  async yearCard(@Tx() tx: OrganizationTransaction, @Parent() controller: Controller): Promise<YearCard | null> {
    if (!roleIncludes(tx.actor.role, Permission.ReadPortfolio)) return null;
    const row = (await controllerOfId.of(tx).load(controller.id))!;
    const { inputs, needMonths, reason } = await gatherYear(tx, row);
    if (!reason && !planner.knows({ month: null, year: inputs })) await tx.rest();
    const card = reason ? null : await planner.card(inputs);
    const frost = await frostOf(tx, row.propertyId);
    return Object.assign(new YearCard(), { controllerId: controller.id, reason, frost, ...(card ? showCard(card, needMonths) : NO_CARD) });
  }
}

const NO_CARD = { thirstiest: null, programs: [], shortStations: [], months: [] };

const showCard = ({ thirstiest, programs, judgement, months }: Card, needMonths: GatheredYear['needMonths']) => ({
  thirstiest,
  programs: programs.map(keepProgram).map(showProgram),
  shortStations: judgement.zones
    .filter(({ unmetLitres, neededLitres }) => unmetLitres > HALF * neededLitres)
    .map(({ station }) => station)
    .sort((one, other) => one - other),
  months: months.map((month, at) => showMonth(month, needMonths[at] ?? [])),
});

interface GatheredYear {
  readonly needMonths: readonly (readonly string[])[];
  readonly inputs: readonly PlanInput[];
  readonly reason: Gathered['reason'];
}

async function gatherYear(tx: OrganizationTransaction, controller: PlannableController): Promise<GatheredYear> {
  const first = Temporal.PlainYearMonth.from(todayOf(await organizations.own(tx)).slice(0, 7));
  const inputs: PlanInput[] = [];
  const needMonths: (readonly string[])[] = [];
  for (let ahead = 0; ahead < MONTHS; ahead += 1) {
    const gathered = await gatherPlan(tx, controller, first.add({ months: ahead }).toString());
    if (!gathered.input) return { inputs: [], needMonths: [], reason: gathered.reason };
    inputs.push(gathered.input);
    needMonths.push(gathered.needMonths);
  }
  return { inputs, needMonths, reason: null };
}

const showMonth = ({ month, isOff, offer, neededLitres }: CardMonth, needMonths: readonly string[]): YearCardMonth =>
  Object.assign(new YearCardMonth(), {
    ...{ month, isOff, neededLitres, needMonths: [...needMonths] },
    programs: isOff || !offer ? null : offer.programs.map(keepProgram).map(showProgram),
    usedLitres: isOff ? 0 : (offer?.judgement.usedLitres ?? null),
  });

async function frostOf(tx: OrganizationTransaction, propertyId: string): Promise<FrostRecord | null> {
  const property = await propertyOfId.of(tx).load(propertyId);
  const series = property?.weatherStationId ? await stationSeriesOf.of(tx).load(property.weatherStationId) : null;
  const frost = series && frostMonths(series.measured);
  return frost && Object.assign(new FrostRecord(), { months: [...frost.months], measuredDays: frost.measuredDays });
}
