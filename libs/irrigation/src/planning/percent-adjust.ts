import { DomainError } from '@rillbook/units/domain-error.js';

/** A zone's month: what the plants need, and what the settings put out at the percent that is set now. */
export interface ZonePlan {
  readonly zoneId: string;
  readonly neededLitres: number;
  readonly programmedLitres: number;
}

/** The percents that a controller can be set to. Null step: whole percents; null maximum: the controller's limit is not known. */
export interface PercentLimits {
  readonly stepPercent: number | null;
  readonly maxPercent: number | null;
}

/** What the least change leaves in one zone. */
export interface ZoneRemainder {
  readonly zoneId: string;
  readonly programmedLitres: number;
  readonly overLitres: number;
  readonly underLitres: number;
}

/** The least change: one percent, what it would have put out, and what it leaves over and under. */
export interface PercentAdjustment {
  readonly percent: number;
  readonly capped: boolean;
  readonly programmedLitres: number;
  readonly overLitres: number;
  readonly underLitres: number;
  readonly zones: readonly ZoneRemainder[];
}

/**
 * The least change of a program or controller: the percent adjust that brings what is programmed nearest to what is needed.
 *
 * percent = now · ΣN / ΣP, to the nearest step that the controller has, at most its maximum; what it leaves is told zone by zone, so that a
 * drowned zone never hides a thirsty one.
 *
 * @param zones - The zones that the percent applies to, with their month's need and program. [L]
 * @param percentNow - The percent in force during that month. [%]
 * @param limits - Step and maximum of the controller's percent adjust. [%]
 * @returns The percent and what it leaves, or null where nothing is programmed and no percent can help. [%] and [L]
 * @throws {DomainError} `PERCENT_ADJUST_OUT_OF_DOMAIN` when a volume is below zero or the percent now, step or maximum is not above zero.
 */
export function percentAdjust(zones: readonly ZonePlan[], percentNow: number, limits: PercentLimits): PercentAdjustment | null {
  const { stepPercent, maxPercent } = limits;
  const step = stepPercent ?? 1;
  const good = percentNow > 0 && step > 0 && (maxPercent === null || maxPercent > 0);
  if (!good || zones.some(({ neededLitres, programmedLitres }) => !(neededLitres >= 0 && programmedLitres >= 0))) {
    throw new DomainError('PERCENT_ADJUST_OUT_OF_DOMAIN', { percentNow, stepPercent, maxPercent });
  }
  const needed = sum(zones.map(({ neededLitres }) => neededLitres));
  const programmed = sum(zones.map(({ programmedLitres }) => programmedLitres));
  if (programmed === 0) return null;
  const exact = (percentNow * needed) / programmed;
  const largest = maxPercent === null ? Number.POSITIVE_INFINITY : Math.floor(maxPercent / step + 1e-9) * step;
  const percent = Math.min(Math.round(exact / step) * step, largest);
  const left = zones.map((zone) => remainder(zone, percent / percentNow));
  return {
    percent,
    capped: exact > largest,
    programmedLitres: sum(left.map(({ programmedLitres }) => programmedLitres)),
    overLitres: sum(left.map(({ overLitres }) => overLitres)),
    underLitres: sum(left.map(({ underLitres }) => underLitres)),
    zones: left,
  };
}

function remainder(zone: ZonePlan, ratio: number): ZoneRemainder {
  const programmedLitres = zone.programmedLitres * ratio;
  const gap = programmedLitres - zone.neededLitres;
  return { zoneId: zone.zoneId, programmedLitres, overLitres: Math.max(0, gap), underLitres: Math.max(0, -gap) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
