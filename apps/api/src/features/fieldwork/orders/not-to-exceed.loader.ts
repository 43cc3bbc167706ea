import { defineLoader } from '../../../platform/graphql/loader.js';
import { workOrders } from './work-order.repository.js';

/** What the client of a property lets be spent without asking. [money] */
export const notToExceedOfProperty = defineLoader<string, number | null>((tx, ids) => workOrders.notToExceed(tx, ids), null);
