import { type Address, monthIn } from '../../page/use-address.js';

export interface PropertyPlace {
  readonly month: string | null;
}

export const propertyAddress: Address<PropertyPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')) }),
  write: ({ month }) => ({ month }),
};
