import { DomainError } from '@rillbook/units/domain-error.js';

/** Lengths of the four growth stages (FAO-56, Table 11). */
export type GrowthStages = {
  /** From planting to a tenth of cover. [d] */
  readonly initialDays: number;
  /** From there to full cover. [d] */
  readonly developmentDays: number;
  /** From there to the start of ripening or fading. [d] */
  readonly midDays: number;
  /** From there to the end. [d] */
  readonly lateDays: number;
};

/** A coefficient in the three stages where it has a value of its own (FAO-56, Tables 12 and 17). */
export type StageCoefficients = {
  /** In the initial stage. [–] */
  readonly initial: number;
  /** In mid-season. [–] */
  readonly mid: number;
  /** At the end of the late season. [–] */
  readonly end: number;
};

/**
 * Coefficient on a day of the season, straight between the stages (FAO-56, Eq. 66).
 *
 * Kc = Kc(previous) + (day - end of previous stage) / length of stage · (Kc(next) - Kc(previous)); after the last stage the end's value stays
 *
 * @param seasonDay - Days since the season began, 0 on its first day. [d]
 * @param stages - Lengths of the growth stages. [d]
 * @param coefficients - Its value in each stage. [–]
 * @returns The coefficient on that day. [–]
 * @throws {DomainError} `GROWTH_STAGES_OUT_OF_DOMAIN` when a length is negative or not finite, or the day is;
 * `CROP_COEFFICIENT_OUT_OF_DOMAIN` when a coefficient is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 66 and Figure 34.
 */
export function stageCoefficient(seasonDay: number, stages: GrowthStages, coefficients: StageCoefficients): number {
  const { initial, mid, end } = coefficients;
  if (!Number.isFinite(initial + mid + end)) throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { ...coefficients });
  const lateFrom = stages.initialDays + stages.developmentDays + stages.midDays;
  const developed = developedShare(seasonDay, stages);
  if (seasonDay <= lateFrom) return initial + developed * (mid - initial);
  if (seasonDay >= lateFrom + stages.lateDays) return end;
  return mid + ((seasonDay - lateFrom) / stages.lateDays) * (end - mid);
}

/**
 * Share of the development from the initial stage to mid-season, after which it stays: what height and roots follow (FAO-56, Eq. 66).
 *
 * @param seasonDay - Days since the season began, 0 on its first day. [d]
 * @param stages - Lengths of the growth stages. [d]
 * @returns 0 in the initial stage, 1 from mid-season on. [–]
 * @throws {DomainError} `GROWTH_STAGES_OUT_OF_DOMAIN` when a length is negative or not finite, or the day is.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 66; roots and height grow with Kcb, chapter 8 and Annex 8.
 */
export function developedShare(seasonDay: number, stages: GrowthStages): number {
  const { initialDays, developmentDays, midDays, lateDays } = stages;
  const sum = seasonDay + initialDays + developmentDays + midDays + lateDays;
  if (!(seasonDay >= 0 && initialDays >= 0 && developmentDays >= 0 && midDays >= 0 && lateDays >= 0 && sum < Infinity)) {
    throw new DomainError('GROWTH_STAGES_OUT_OF_DOMAIN', { seasonDay, ...stages });
  }
  if (seasonDay <= initialDays) return 0;
  return seasonDay >= initialDays + developmentDays ? 1 : (seasonDay - initialDays) / developmentDays;
}
