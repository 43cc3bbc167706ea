import { doubtfulSources } from '../doubtful-reading.js';
import type { FindingCandidate } from '../finding-candidate.js';
import { judgeAllowance } from './judge-allowance.js';
import { judgeControllers } from './judge-controllers.js';
import type { JudgeInput } from './judge-input.js';
import { judgeMeters } from './judge-meters.js';

/**
 * What a month account gives a person to look at: significant and material, and one candidate for a cause.
 *
 * Each gap is judged by its owner: settings by controller, unexplained use by meter, the allowance last and only for what nothing else
 * explains. Staleness and single readings are judged apart (`judgeStale`, `doubtfulReading`): they need no account.
 *
 * @param input - The account, earlier months of its meters, the organization's thresholds and the price of water. [code]
 * @returns Candidates with distinct causes; none before the first complete day. [code]
 */
export function judgeAccount(input: JudgeInput): readonly FindingCandidate[] {
  if (input.account.throughDate === null) return [];
  const controllers = judgeControllers(input);
  const meters = judgeMeters(input, controllers);
  return [...controllers, ...meters, ...judgeAllowance(input, [...controllers, ...meters]), ...doubtfulSources(input.account)];
}
