import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import type fc from 'fast-check';

export declare const someMeasuredProperty: fc.Arbitrary<AccountInput>;
export declare function standardNormals(seed: number): () => number;
export declare const FIRST_ORDER_TOLERANCE: number;
export declare function sampling(draws: number): number;
export declare interface Compared {
  readonly figure: string;
  readonly firstOrder: number;
  readonly observed: number;
  /** How far the two are apart, over the observed one or a fiftieth of the largest volume, whichever is more. */
  readonly miss: number;
}
export declare function firstOrderAgainstDraws(input: AccountInput, draws: number, normal: () => number): readonly Compared[];
