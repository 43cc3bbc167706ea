import type { MonthAccount } from '../../account/month-account.js';
import type { Thresholds } from '../thresholds.js';

/** One earlier month of one meter: what it metered and what was programmed, null where absent or no more than an estimate. */
export interface EarlierMonth {
  readonly month: string;
  readonly meterId: string;
  readonly meteredLitres: number | null;
  readonly programmedLitres: number | null;
}

/** What an account is judged by. `pricePerLitre` is by meter id; null or absent where no price is known. */
export interface JudgeInput {
  readonly account: MonthAccount;
  readonly history: readonly EarlierMonth[];
  readonly thresholds: Thresholds;
  readonly pricePerLitre: ReadonlyMap<string, number | null>;
}
