import { type Address, monthIn } from '../../../page/use-address.js';

export interface MonthPlace {
  readonly month: string | null;
}

export const monthAddress: Address<MonthPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')) }),
  write: ({ month }) => ({ month }),
};
