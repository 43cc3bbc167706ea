import { defineLoader } from '../../../../platform/graphql/loader.js';
import { workOrders } from '../work-order.repository.js';

/** An order as somebody read it. */
export interface OrderRead {
  readonly id: string;
  readonly version: number;
}

/** The day for which an order was given out since it was read, to another stop than it had then; null where it was not. */
export const movedOrderDay = defineLoader<string, string | null>((tx, read) => workOrders.movedTo(tx, read.map(readOf)), null);

/** The key of the question. */
export const orderRead = ({ id, version }: OrderRead): string => `${id.toLowerCase()} ${version}`;

function readOf(key: string): OrderRead {
  const [id, version] = key.split(' ') as [string, string];
  return { id, version: Number(version) };
}
