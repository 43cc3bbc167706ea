import { type MonthUnderWay, projectMonth } from './project-month.js';

/** What a month under way will have beyond its allowance, with the band that holds nine of ten; below zero where it keeps within it. */
export interface ProjectedExcess {
  readonly litres: number;
  readonly lowerLitres: number;
  readonly upperLitres: number;
}

/**
 * What a month under way will have beyond its allowance.
 *
 * E = M − A·D/d, with M the month's projected use, A what is allowed for the d days so far and D the days of the month
 *
 * @param month - The days so far, and what is usual of those to come. [L]
 * @param allowedLitres - What is allowed for the days so far. [L]
 * @returns The excess at the month's end; null where the month cannot be projected. [L]
 * @throws {DomainError} `MONTH_OUT_OF_DOMAIN` when there are more days than the month has, or a volume is not finite.
 */
export function projectAllowance(month: MonthUnderWay, allowedLitres: number): ProjectedExcess | null {
  const projected = projectMonth(month);
  if (!projected) return null;
  const allowed = (allowedLitres * month.daysInMonth) / month.perDay.length;
  return {
    litres: projected.litres - allowed,
    lowerLitres: projected.lowerLitres - allowed,
    upperLitres: projected.upperLitres - allowed,
  };
}
