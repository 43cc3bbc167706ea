import type { Address } from '../../../page/use-address.js';
import { dayAddress } from '../urls.js';

export interface RoutesPlace {
  readonly day: string | null;
  /** The work order whose dialog is open, or `new`. */
  readonly order: string | null;
}

export const NEW_ORDER = 'new';

export const routesAddress: Address<RoutesPlace> = {
  read: (query) => ({ day: dayAddress.read(query).day, order: query.get('order') }),
  write: ({ day, order }) => ({ day, order }),
};
