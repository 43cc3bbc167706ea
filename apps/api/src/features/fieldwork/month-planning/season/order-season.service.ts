import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { organizations } from '../../../../platform/identity/organizations/organization.repository.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { planAhead, planOfController } from '../../../plans/offers/plan-of-controller.service.js';
import { controllersOfProperty } from '../../../portfolio/controllers/controllers-of-property.loader.js';
import { inScope } from '../../../portfolio/properties/property-scope.service.js';
import { OrderPlan } from '../../order-deeds/in-one-go/order-plan.service.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';
import type { WorkOrderRow } from '../../orders/work-order.entity.js';
import { hasEnded } from '../../orders/work-order-kinds.js';
import { isWorthGoing } from './is-worth-going.js';

const MOST = 10;

/** A month's settings are entered about its turn, so many days before it at the soonest: common practice. [days] */
const EARLY_DAYS = 3;

/** What is asked for: where, for which month, and how the order is called. */
export interface SeasonOrder {
  readonly propertyIds: readonly string[];
  readonly month: string;
  readonly what: string;
}

/** Makes the seasonal change into work: a month's settings and the order to enter them, for each controller where that is worth the way. */
@Injectable()
export class OrderSeason {
  constructor(private readonly order: OrderPlan) {}

  /** @returns the orders that were made; a controller that already has an adjustment to be done keeps that one */
  async run(tx: OrganizationTransaction, { propertyIds, month, what }: SeasonOrder): Promise<WorkOrderRow[]> {
    if (propertyIds.length > MOST)
      throw platformProblems.valueRefused({ field: 'propertyIds', found: propertyIds.length, expected: `at most ${MOST} at a time` });
    const seen = await inScope(tx, propertyIds);
    const stranger = propertyIds.find((id) => !seen.has(id.toLowerCase()));
    if (stranger !== undefined) throw platformProblems.notFound({ thing: 'property', id: stranger });
    const { leastLitres } = await organizations.own(tx);
    const notBefore = dateOfDayNumber(dayNumberOfDate(`${month}-01`) - EARLY_DAYS);
    await planAhead(tx, await toPlan(tx, [...seen]), month);
    const made: WorkOrderRow[] = [];
    for (const propertyId of seen) {
      for (const controller of await toPlan(tx, [propertyId])) {
        const { plan } = await planOfController(tx, controller, month);
        if (plan && isWorthGoing(plan, leastLitres))
          made.push(await this.order.run(tx, { controllerId: controller.id, propertyId, plan, notBefore, wordsOf: 'season' }, what, null));
      }
    }
    return made;
  }
}

/** The controllers of these properties that have no adjustment to be done. */
async function toPlan(tx: OrganizationTransaction, propertyIds: readonly string[]) {
  const found = [];
  for (const propertyId of propertyIds)
    for (const controller of await controllersOfProperty.of(tx).load(propertyId))
      if (!controller.retiredAt && !(await hasAdjustment(tx, propertyId, controller.id))) found.push(controller);
  return found;
}

const hasAdjustment = async (tx: OrganizationTransaction, propertyId: string, controllerId: string): Promise<boolean> =>
  (await ordersOfProperty.of(tx).load(propertyId)).some(
    (order) => order.controllerId === controllerId && order.kind === 'adjust' && order.pauseUntil === null && !hasEnded(order.state),
  );
