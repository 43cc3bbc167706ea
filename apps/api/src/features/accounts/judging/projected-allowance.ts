import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { projectAllowance } from '@rillbook/metering/detection/monthly/projected/project-allowance.js';
import type { PropertyEvidence } from '../evidence/property-evidence.js';

/** Over allowance in a month under way, with what it will come to by what drives its use, and the band of that; else it stays a projection by days. */
export function withProjection(episodes: readonly Episode[], evidence: PropertyEvidence): Episode[] {
  return episodes.map((episode) => {
    const { daysCovered, daysInMonth, meteredLitres, allowedLitres } = numbersOf(episode);
    if (episode.kind !== 'over allowance' || !(daysCovered < daysInMonth) || Number.isNaN(meteredLitres + allowedLitres)) return episode;
    const from = dayNumberOfDate(`${episode.untilDate.slice(0, 'YYYY-MM'.length)}-01`) - evidence.calendar.firstDay;
    const perDay = drivenPerDay(evidence.meters, from, daysCovered);
    const projected = perDay && projectAllowance({ daysInMonth, metered: meteredLitres, perDay, normalPerDay: null }, allowedLitres);
    if (!projected) return episode;
    const band = {
      projectedLitres: projected.litres,
      projectedLowerLitres: projected.lowerLitres,
      projectedUpperLitres: projected.upperLitres,
    };
    return {
      ...episode,
      evidence: { ...episode.evidence, ...band },
      says: { ...episode.says, details: { ...episode.says.details, ...band } },
    };
  });
}

function numbersOf({ says: { details } }: Episode) {
  const number = (name: string) => (typeof details[name] === 'number' ? details[name] : Number.NaN);
  return {
    daysCovered: number('daysCovered'),
    daysInMonth: number('daysInMonth'),
    meteredLitres: number('meteredLitres'),
    allowedLitres: number('allowedLitres'),
  };
}

/** What drives use, day by day: programmed water where all of it is known, else the need; null where neither is. */
function drivenPerDay(meters: readonly MeterEvidence[], from: number, days: number): number[] | null {
  const sumsOf = (litresOf: (meter: MeterEvidence) => Float64Array) =>
    Array.from({ length: days }, (_, day) => meters.reduce((sum, meter) => sum + (litresOf(meter)[from + day] ?? Number.NaN), 0));
  const known = [sumsOf(({ programmedLitres }) => programmedLitres), sumsOf(({ neededLitres }) => neededLitres)];
  return known.find((litres) => litres.every(Number.isFinite)) ?? null;
}
