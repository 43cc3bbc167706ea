import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { nowIn } from '../../organization-clock.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import type { PlanItem } from '../material/plan-item.js';
import { MonthPlanRow, type StoodBefore } from '../runs/month-plan.entity.js';
import { monthPlans } from '../runs/month-plan.repository.js';
import { orderDay } from './apply-plan.service.js';
import { SendItem } from './send-item.service.js';

/** Undoes the last planning of a month: what it moved goes back to where it stood, unless somebody has moved, done or dropped it since. */
@Injectable()
export class UndoPlan {
  constructor(
    private readonly records: KeptRecords,
    private readonly gather: GatherMaterial,
    private readonly send: SendItem,
  ) {}

  async run(tx: OrganizationTransaction, id: string): Promise<MonthPlanRow> {
    await monthPlans.oneAtATime(tx);
    const plan = await monthPlans.ofId(tx, id);
    if (!plan) throw platformProblems.notFound({ thing: 'plan', id });
    const latest = await monthPlans.latest(tx, plan.month.slice(0, 7));
    if (latest?.id !== plan.id) throw fieldworkProblems.planNotLast({ planId: id });
    // It was undone, and the answer was lost.
    if (plan.undoneAt) return plan;
    const items = await this.itemsOf(tx, plan.before);
    for (const stood of plan.before) await this.putBack(tx, stood, whereIsIt(items, stood));
    for (const [day, propertyIds] of daysBefore(plan.before)) {
      const [crewId, date] = day.split(' ') as [string, string];
      await orderDay(tx, { crewId, day: date }, propertyIds);
    }
    const undone = await this.records.change(tx, MonthPlanRow, plan.id, plan.version, { undoneAt: await nowIn(tx) });
    if (undone instanceof VersionConflict) throw fieldworkProblems.planNotLast({ planId: id });
    return undone;
  }

  private async itemsOf(tx: OrganizationTransaction, before: readonly StoodBefore[]): Promise<readonly PlanItem[]> {
    const days = before.flatMap(({ was, went }) => [was, went]).flatMap((place) => (place ? [place.day] : []));
    const [first, last] = [days.sort()[0], days.at(-1)];
    return first !== undefined && last !== undefined ? (await this.gather.run(tx, first, last)).items : [];
  }

  private async putBack(tx: OrganizationTransaction, stood: StoodBefore, item: PlanItem | null): Promise<void> {
    const { was, went } = stood;
    if (!item || (stood.orderIds.length > 0 && item.orders.length === 0)) return;
    if (isSameDay(was, went)) return;
    const stop = await this.send.run(tx, item, was && { crewId: was.crewId, day: was.day });
    if (stop && was && stop.locked !== was.locked) await this.send.lock(tx, stop, was.locked);
  }
}

const isSameDay = (was: StoodBefore['was'], went: StoodBefore['went']): boolean => was?.crewId === went?.crewId && was?.day === went?.day;

/** What the plan moved, if it is still where the plan put it. */
function whereIsIt(items: readonly PlanItem[], { propertyId, went, orderIds }: StoodBefore): PlanItem | null {
  const isIt = ({ propertyId: other, place, visited }: PlanItem): boolean =>
    other === propertyId && !visited && (went ? place?.crewId === went.crewId && place.day === went.day : place === null);
  const item = items.find(isIt);
  return item ? { ...item, orders: item.orders.filter(({ id, state }) => orderIds.includes(id) && state !== 'done') } : null;
}

/** The order of each day as it stood, of what the plan moved. */
function daysBefore(before: readonly StoodBefore[]): ReadonlyMap<string, readonly string[]> {
  const days = new Map<string, { readonly propertyId: string; readonly position: number }[]>();
  for (const { was, propertyId } of before) {
    if (!was) continue;
    const day = `${was.crewId} ${was.day}`;
    days.set(day, [...(days.get(day) ?? []), { propertyId, position: was.position }]);
  }
  return new Map(
    [...days].map(([day, all]) => [day, all.sort((one, other) => one.position - other.position).map(({ propertyId }) => propertyId)]),
  );
}
