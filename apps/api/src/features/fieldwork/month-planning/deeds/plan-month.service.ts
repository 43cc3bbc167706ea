import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { breachesOfPlan } from '@rillbook/routing/judge/breaches-of-plan.js';
import { whyUnplaced } from '@rillbook/routing/judge/why-unplaced.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { nowIn, todayIn } from '../../organization-clock.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import type { PlanMaterial } from '../material/plan-item.js';
import { placesOf, planInputOf, type PlanWish } from '../material/plan-input-of.js';
import { type KeptReason, MonthPlanRow } from '../runs/month-plan.entity.js';
import { monthPlans } from '../runs/month-plan.repository.js';
import { plannedBefore } from '../runs/planned-before.js';
import { standingReasons } from '../runs/standing-reasons.js';
import { solveInThread } from '../solving/solve-in-thread.js';
import { TravelTimes } from '../travel/travel-times.service.js';
import { ApplyPlan, type SolvedPlan } from './apply-plan.service.js';

interface Named {
  readonly month: string;
  /** made by the device */
  readonly id: string | null;
}

/** Plans a month from tomorrow on, or from its first day: everything that is not locked may move, and what has no day yet gets one. */
@Injectable()
export class PlanMonth {
  constructor(
    private readonly records: KeptRecords,
    private readonly gather: GatherMaterial,
    private readonly travel: TravelTimes,
    private readonly apply: ApplyPlan,
  ) {}

  async run(tx: OrganizationTransaction, month: string, id: string | null): Promise<MonthPlanRow> {
    const made = await plannedBefore(tx, id, month);
    if (made) return made;
    const { firstDay, days } = daysOfMonth(month);
    const tomorrow = dayNumberOfDate(await todayIn(tx)) + 1;
    const until = dateOfDayNumber(firstDay + days - 1);
    const from = dateOfDayNumber(Math.max(firstDay, tomorrow));
    if (from > until) throw platformProblems.valueRefused({ field: 'month', found: month, expected: `a month with days after today` });
    const known = await this.gather.run(tx, from, until);
    return this.plan(tx, known, { isFree: ({ locked }) => !locked, now: null }, { month, id });
  }

  /** Plans what is free in some material, makes the routes so, and keeps what was done. */
  async plan(tx: OrganizationTransaction, known: PlanMaterial, wish: PlanWish, { month, id }: Named): Promise<MonthPlanRow> {
    const places = placesOf(known);
    const { table, basis } = await this.travel.run(places.positions);
    const { input, items } = planInputOf(known, { places, travel: table, wish });
    const solved: SolvedPlan = { input, items, assignment: await solveInThread(input) };
    refuseBroken(solved);
    const before = await this.apply.run(tx, solved);
    const unplaced = unplacedOf(solved);
    return (
      (before.length === 0 && (await this.again(tx, month, wish.now ? null : unplaced))) ||
      this.records.create(tx, MonthPlanRow, {
        ...(id && { id: id.toLowerCase() }),
        month: `${month}-01`,
        madeAt: await nowIn(tx),
        madeBy: tx.actor.personId,
        undoneAt: null,
        before: [...before],
        moved: before.filter(({ was, went }) => was?.crewId !== went?.crewId || was?.day !== went?.day).length,
        travel: { ...basis },
        unplaced: wish.now ? [...unplaced, ...(await foundEarlier(tx, month))] : unplaced,
      })
    );
  }

  /**
   * A planning that changes nothing does not come after the last one: where it was sent twice after a lost answer, what was moved can still be
   * taken back. The rest of a day says nothing of what else has no day: there `unplaced` is null.
   */
  private async again(tx: OrganizationTransaction, month: string, unplaced: MonthPlanRow['unplaced'] | null): Promise<MonthPlanRow | null> {
    const latest = await monthPlans.latest(tx, month);
    if (!latest || latest.undoneAt) return null;
    if (!unplaced) return { ...latest, moved: 0, unplaced: [] };
    const same = await this.records.change(tx, MonthPlanRow, latest.id, latest.version, { unplaced });
    return same instanceof VersionConflict ? null : { ...same, moved: 0 };
  }
}

/** What was found of things that the rest of a day has nothing to do with. */
const foundEarlier = async (tx: OrganizationTransaction, month: string): Promise<KeptReason[]> =>
  standingReasons(await monthPlans.latest(tx, month)).map((reason) => ({ ...reason, isEarlier: true }));

function unplacedOf(solved: SolvedPlan): MonthPlanRow['unplaced'] {
  const reasons = whyUnplaced(solved.input, solved.assignment);
  return solved.assignment.unplaced.map((index, at) => {
    const { code, ...details } = reasons[at]!;
    return { itemId: keyOf(solved, index), code, details };
  });
}

/** What an item without a day is called once it has none: a stop that lost its day is its open orders again. */
function keyOf({ items }: SolvedPlan, index: number): string {
  const { id, stopId, orders, propertyId } = items[index]!;
  return stopId !== null && orders.length > 0 ? `orders ${propertyId}` : id;
}

/** The plan is judged by what was asked, not by what the search believes; locked stops alone may break hours, and are told of on their day. */
function refuseBroken({ input, assignment }: SolvedPlan): void {
  const lockedDays = new Set(input.stops.flatMap(({ locked }) => (locked ? [locked.crewDayId] : [])));
  const [broken] = breachesOfPlan(input, assignment).filter(({ crewDayId }) => crewDayId === null || !lockedDays.has(crewDayId));
  if (broken) throw new TypeError(`the plan breaks what was asked: ${JSON.stringify(broken)}`);
}
