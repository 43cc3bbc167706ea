import { defineLoader } from '../../../../platform/graphql/loader.js';
import { todayIn } from '../../organization-clock.js';
import { type OvertakingOrder, workOrders } from '../work-order.repository.js';

/** The order whose newer plan of the same controller makes an order's plan needless; null where there is none. */
export const overtakingOrder = defineLoader<string, OvertakingOrder | null>(
  async (tx, ids) => workOrders.overtaken(tx, ids, await todayIn(tx)),
  null,
);
