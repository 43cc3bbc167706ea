import { type Address, monthIn } from '../../page/use-address.js';

export interface WaterPlace {
  /** The newest month where none is named. */
  readonly month: string | null;
}

export const waterAddress: Address<WaterPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')) }),
  write: ({ month }) => ({ month }),
};
