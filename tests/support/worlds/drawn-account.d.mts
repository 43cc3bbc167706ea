import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import type fc from 'fast-check';

export declare const someMeasuredProperty: fc.Arbitrary<AccountInput>;
/** Rain covers nearly all that every zone needed. */
export declare const someWetProperty: fc.Arbitrary<AccountInput>;
export declare function standardNormals(seed: number): () => number;
/** Largest mean miss of many properties of 4,000 draws. */
export declare const MEAN_TOLERANCE: number;
export declare function sampling(draws: number): number;
export declare interface Compared {
  readonly figure: string;
  readonly firstOrder: number;
  readonly observed: number;
  /** How far the two are apart, over the observed one or a fiftieth of the largest volume, whichever is more. */
  readonly miss: number;
  /** How far they may be: what first order leaves out, and the chance of the draws. */
  readonly allowed: number;
}
export declare function firstOrderAgainstDraws(input: AccountInput, draws: number, normal: () => number): readonly Compared[];
