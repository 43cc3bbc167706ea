import { judgeHourly } from '../hourly/judge-hourly.js';
import { judgeMonthly } from '../monthly/judge-monthly.js';
import { rainNotPausedFor } from '../settings/rain-not-paused-for.js';
import type { Thresholds } from '../thresholds.js';
import type { Episode } from '../evidence/episode.js';
import { handedOver } from './hand-over.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { spellsTogether } from './spells-together.js';
import { whileFed } from './while-fed.js';

/**
 * Everything that is found of one meter through time, by its readings and bills, its hourly usage and the settings of its zones.
 *
 * @param evidence - All that is known of the meter. [code]
 * @param thresholds - What the organization wants to be told. [any]
 * @returns Episodes in no order; those of one cause are not settled yet (`settleEpisodes`). [code]
 * @throws {DomainError} As `judgeHourly`.
 */
export function judgeMeter(evidence: MeterEvidence, thresholds: Thresholds): readonly Episode[] {
  const said = handedOver(evidence, {
    monthly: judgeMonthly(evidence, thresholds),
    hourly: judgeHourly(whileFed(evidence)).filter((episode) => isWorthALook(episode, thresholds)),
  });
  // Where the hours are known the meter itself saw whether water ran in the rain.
  const rain = evidence.usage ? said.hourly.filter(({ kind }) => kind === 'watered in rain') : rainNotPausedFor(evidence, thresholds);
  return [...said.monthly, ...said.hourly.filter(({ kind }) => kind !== 'watered in rain'), ...spellsTogether(rain)];
}

// As it was at its most: who was told of it was told.
function isWorthALook(episode: Episode, { minLitres, minMoney, minConfidence }: Thresholds): boolean {
  const { litres, confidence } = episode.atMost ?? episode;
  const money = episode.money === null || !episode.litres || litres === null ? episode.money : (episode.money * litres) / episode.litres;
  return (litres === null || litres >= minLitres) && (money === null || money >= minMoney) && confidence >= minConfidence;
}
