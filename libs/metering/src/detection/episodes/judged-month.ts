import type { MonthAccount } from '../../account/month-account.js';
import { judgeAllowance } from '../account/judge-allowance.js';
import { judgeControllers } from '../account/judge-controllers.js';
import { doubtfulSources } from '../doubtful-reading.js';
import type { FindingCandidate } from '../finding-candidate.js';

/** Everything that has more water than none, more probably than not: what is worth a look is decided when months are put together. */
const EVERYTHING = { minConfidence: 0.5, minLitres: 1, minMoney: 0 } as const;

/** What a month account says of settings, allowance and sources, small enough to be kept beside it and read again without it. */
export interface JudgedMonth {
  readonly month: string;
  readonly throughDate: string | null;
  readonly daysCovered: number;
  readonly daysInMonth: number;
  /** Of controllers and of sources that contradict each other. */
  readonly candidates: readonly FindingCandidate[];
  /** Before anything else has explained the excess. */
  readonly allowance: FindingCandidate | null;
}

/**
 * What a month account says of settings, allowance and sources.
 *
 * @param account - The account. [L]
 * @param pricePerLitre - Price of water; null where it is not known. [any]
 * @returns Its candidates, before any threshold of the organization. [L]
 */
export function judgedMonth(account: MonthAccount, pricePerLitre: number | null): JudgedMonth {
  const { month, throughDate, daysCovered, daysInMonth } = account;
  if (throughDate === null) return { month, throughDate, daysCovered, daysInMonth, candidates: [], allowance: null };
  const prices = new Map(account.meters.map(({ meterId }) => [meterId, pricePerLitre]));
  const input = { account, history: [], thresholds: EVERYTHING, pricePerLitre: prices };
  const [allowance] = judgeAllowance(input, []);
  return {
    ...{ month, throughDate, daysCovered, daysInMonth },
    candidates: [...judgeControllers(input), ...doubtfulSources(account)],
    allowance: allowance ?? null,
  };
}
