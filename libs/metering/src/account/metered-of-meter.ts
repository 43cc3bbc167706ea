import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { weightBesideSteadyUse } from '../intervals/apportion-interval.js';
import { type Contradiction, contradictions } from '../intervals/contradictions.js';
import { type MeteredDay, type MeteredDays, meteredDays } from '../intervals/metered-days.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { absence } from '../volumes/absence.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { etoOfDay } from '../volumes/weather-series.js';
import { fillMissingDays, type FilledVolume, nothingMissing } from '../volumes/fill-missing-days.js';
import type { AccountMeter } from './account-input.js';
import type { CoveredMonth } from './needed/covered-month.js';

/** What one meter says went through: the volume less the indoor share, how far it reaches, and where its sources contradict each other. */
export interface MeteredOfMeter {
  readonly figure: Figure;
  readonly meteredThrough: string | null;
  readonly contradictions: readonly Contradiction[];
}

interface IndoorUse {
  readonly litresPerDay: number;
  readonly relativeSd: number;
}

/**
 * Metered water of one meter: intervals apportioned to the month, one source per instant, less the indoor share of a mixed
 * meter: that share runs every day alike, the rest follows the weather.
 *
 * M = Σ share · volume − indoor · days; never clipped at zero
 *
 * @param meter - The meter and its intervals. [L]
 * @param month - The covered days and the weather. [mm]
 * @param neededByDay - Need of the meter's zones by day, to fill uncovered days by; null fills by days. [L], one per day
 * @returns The volume, the last date reached without a hole, and contradictions. [L]
 * @throws {DomainError} `USAGE_INTERVAL_OUT_OF_DOMAIN` when an interval runs backwards or its volume is not finite.
 */
export function meteredOfMeter(meter: AccountMeter, month: CoveredMonth, neededByDay: () => readonly number[] | null): MeteredOfMeter {
  for (const interval of meter.intervals) {
    const good = interval.toLocalDay > interval.fromLocalDay && Number.isFinite(interval.litres) && interval.sdLitres >= 0;
    if (!good) throw new DomainError('USAGE_INTERVAL_OUT_OF_DOMAIN', { meterId: meter.id, ...interval });
  }
  // Also of days outside the month: an interval that crosses its end is divided alike in both months.
  const weightIn = weightBesideSteadyUse(indoorUse(meter)?.litresPerDay ?? 0, (day) => etoOfDay(month.weather, day));
  const touching = meter.intervals.filter((each) => each.toLocalDay > month.firstDay && each.fromLocalDay < month.firstDay + month.days);
  const metered = meteredDays(touching, month.firstDay, month.days, weightIn, defaultRelativeSd.apportioning);
  const holeAt = metered.days.findIndex(({ coveredShare }) => coveredShare < 1);
  const reached = holeAt < 0 ? month.days : holeAt;
  return {
    figure: figureOf(meter, month, metered, holeAt < 0 ? null : neededByDay()),
    meteredThrough: reached === 0 ? null : dateOfDayNumber(month.firstDay + reached - 1),
    contradictions: contradictions(touching, weightIn),
  };
}

function figureOf(meter: AccountMeter, month: CoveredMonth, metered: MeteredDays, neededByDay: readonly number[] | null): Figure {
  const indoor = indoorUse(meter);
  if (!indoor) return absent(absence('indoor-not-known', { meters: [meter.id] }));
  const filled = withoutIndoor(month, metered, indoor, neededByDay);
  if (filled.litres === null) return absent(absence('readings-missing', { meters: [meter.id], missingShare: filled.missingShare }));
  const indoorLitres = indoor.litresPerDay * month.days;
  const inputs = (['meter', 'registerResolution', 'apportioning', 'indoor', 'filledReadings'] as const).map((name) =>
    month.inputs.input(name, meter.id),
  );
  const effects = [
    (filled.litres + indoorLitres) * defaultRelativeSd.meter,
    Math.sqrt(metered.resolutionVariance),
    Math.sqrt(metered.apportioningVariance),
    -indoorLitres * indoor.relativeSd,
    filled.filledLitres * defaultRelativeSd.filled,
  ];
  return known({ litres: filled.litres, inputs, effects }, filled.filledLitres);
}

function withoutIndoor(
  { etWeights }: CoveredMonth,
  { days }: MeteredDays,
  indoor: IndoorUse,
  neededByDay: readonly number[] | null,
): FilledVolume {
  const litresOf = ({ litres, coveredShare }: MeteredDay) => litres - coveredShare * indoor.litresPerDay;
  if (days.every(({ coveredShare }) => coveredShare === 1)) return nothingMissing(days.reduce((sum, day) => sum + litresOf(day), 0));
  return fillMissingDays(
    days.map((day, at) => ({
      litres: litresOf(day),
      knownShare: day.coveredShare,
      etWeight: etWeights[at] ?? 1,
      neededLitres: neededByDay?.[at] ?? null,
    })),
  );
}

function indoorUse(meter: AccountMeter): IndoorUse | null {
  if (meter.kind === 'irrigation') return { litresPerDay: 0, relativeSd: 0 };
  if (meter.indoorLitresPerDay !== null) return { litresPerDay: meter.indoorLitresPerDay, relativeSd: defaultRelativeSd.indoor.stated };
  if (meter.winterLitresPerDay !== null) return { litresPerDay: meter.winterLitresPerDay, relativeSd: defaultRelativeSd.indoor.winter };
  return null;
}
