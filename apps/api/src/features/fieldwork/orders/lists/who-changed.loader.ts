import { defineLoader } from '../../../../platform/graphql/loader.js';
import { type WhoChanged, workOrders } from '../work-order.repository.js';

export type { WhoChanged };

/** Who gave an order the state that it has. */
export const whoSetState = defineLoader<string, WhoChanged | null>((tx, ids) => workOrders.changedBy(tx, 'state', ids), null);

/** Who put an order where it is given out. */
export const whoGaveOut = defineLoader<string, WhoChanged | null>((tx, ids) => workOrders.changedBy(tx, 'stopId', ids), null);
