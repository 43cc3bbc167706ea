import { Injectable } from '@nestjs/common';
import type { Assignment, PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { routes } from '../../routes/route.repository.js';
import { stops } from '../../routes/stop.repository.js';
import type { CrewAndDay, PlanItem } from '../material/plan-item.js';
import type { StoodBefore } from '../runs/month-plan.entity.js';
import { SendItem } from './send-item.service.js';

/** A solved plan with what its indices mean. */
export interface SolvedPlan {
  readonly input: PlanInput;
  readonly items: readonly PlanItem[];
  readonly assignment: Assignment;
}

/** Makes the routes as a plan has them: what goes elsewhere is sent there, and each day gets its order. */
@Injectable()
export class ApplyPlan {
  constructor(private readonly send: SendItem) {}

  /** @returns where everything stood that was moved */
  async run(tx: OrganizationTransaction, { input, items, assignment }: SolvedPlan): Promise<readonly StoodBefore[]> {
    const before: StoodBefore[] = [];
    for (const index of assignment.unplaced) await this.sendOne(tx, items[index]!, null, before);
    for (const [at, route] of assignment.routes.entries()) {
      const { crewId, day } = input.crewDays[at]!;
      const to = { crewId, day: dateOfDayNumber(day) };
      for (const [position, index] of route.entries()) await this.sendOne(tx, items[index]!, to, before, position + 1);
      if (route.length > 0)
        await orderDay(
          tx,
          to,
          route.map((index) => items[index]!.propertyId),
        );
    }
    return before;
  }

  private async sendOne(
    tx: OrganizationTransaction,
    item: PlanItem,
    to: CrewAndDay | null,
    before: StoodBefore[],
    position = 0,
  ): Promise<void> {
    const { place, propertyId, locked } = item;
    const stays = place !== null && to !== null && place.crewId === to.crewId && place.day === to.day;
    if (stays ? place.position === position : place === null && to === null) return;
    before.push({ propertyId, orderIds: item.orders.map(({ id }) => id), was: place && { ...place, locked }, went: to });
    if (!stays) await this.send.run(tx, item, to);
  }
}

/** Numbers the stops of a day: those that are not named first, which are the visited ones, then the named in their order. */
export async function orderDay(tx: OrganizationTransaction, { crewId, day }: CrewAndDay, propertyIds: readonly string[]): Promise<void> {
  const route = await routes.ofCrewAndDay(tx, crewId, day);
  if (!route) return;
  const present = await stops.ofRoutes(tx, [route.id]);
  const rank = (propertyId: string): number => propertyIds.indexOf(propertyId);
  const first = present.filter(({ propertyId }) => rank(propertyId) < 0);
  const then = present
    .filter(({ propertyId }) => rank(propertyId) >= 0)
    .sort((one, other) => rank(one.propertyId) - rank(other.propertyId));
  await stops.number(
    tx,
    route.id,
    [...first, ...then].map(({ id }) => id),
  );
}
