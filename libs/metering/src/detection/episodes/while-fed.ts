import type { MeterEvidence } from '../evidence/meter-evidence.js';

/**
 * A meter's evidence of the days of its feed alone: what was known before the first step says nothing about hours.
 *
 * @param evidence - All that is known of the meter. [code]
 * @returns The same from the local day of the first step to that of the last; as it is where there is no usage by steps. [code]
 */
export function whileFed(evidence: MeterEvidence): MeterEvidence {
  const { usage, midnights, days, firstDay } = evidence;
  if (!usage) return evidence;
  const lastMinute = usage.firstMinute + usage.litres.length * usage.stepMinutes;
  const from = Math.max(
    0,
    midnights.findLastIndex((midnight) => midnight <= usage.firstMinute),
  );
  const after = midnights.findIndex((midnight) => midnight >= lastMinute);
  const until = after < 0 ? days : after;
  const [begin, end] = [midnights[from] ?? 0, midnights[until] ?? 0];
  return {
    ...evidence,
    firstDay: firstDay + from,
    days: until - from,
    midnights: midnights.subarray(from, until + 1),
    rainMm: evidence.rainMm.subarray(from, until),
    etoMm: evidence.etoMm.subarray(from, until),
    programmedLitres: evidence.programmedLitres.subarray(from, until),
    programmedIsEstimate: evidence.programmedIsEstimate.subarray(from, until),
    neededLitres: evidence.neededLitres.subarray(from, until),
    runs: evidence.runs.filter((run) => run.end > begin && run.begin < end),
  };
}
