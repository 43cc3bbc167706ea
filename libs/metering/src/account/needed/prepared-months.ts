import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import { UncertainInputs } from '../../uncertainty/uncertain-input.js';
import { neededDepths } from '../../volumes/needed-depths.js';
import type { NeededDepths, NeedingZone } from '../../volumes/needing-zone.js';
import type { WeatherSeries } from '../../volumes/weather-series.js';
import type { AccountFacts, AccountZone } from '../account-input.js';
import { coveredMonth, type CoveredMonth } from './covered-month.js';

/**
 * A month with its weather, and what each of its zones needed, in the order of the zones. `replays` are those of controllers that were
 * replayed over more than the month already, by their ids; all others are replayed for it.
 */
export interface PreparedMonth {
  readonly covered: CoveredMonth;
  readonly depths: readonly NeededDepths[];
  readonly replays?: ReadonlyMap<string, ControllerReplay>;
}

/**
 * Months of one property with what its zones needed: what is costly in an account, for all months in one pass over the days.
 *
 * @param months - The months, oldest first, each with its zones; the same zones in the same order. [code]
 * @param weather - Weather from 90 days before the first month (later if weather starts later). [mm], one per day
 * @returns One for each month, in the same order. [mm]
 * @throws {DomainError} As `coveredMonth` and `neededDepths`.
 */
export function preparedMonths(
  months: readonly Pick<AccountFacts, 'month' | 'through' | 'zones'>[],
  weather: WeatherSeries,
): readonly PreparedMonth[] {
  const inputs = new UncertainInputs();
  const covered = months.map((month) => coveredMonth(month, weather, inputs));
  const depths = neededDepths(
    weather,
    covered.map(({ firstDay, days }, at) => ({ firstDay, days, zones: (months[at]?.zones ?? []).map(needingZone) })),
    defaultRelativeSd.rain,
  );
  return covered.map((each, at) => ({ covered: each, depths: depths[at] ?? [] }));
}

function needingZone(zone: AccountZone): NeedingZone {
  const assumed = (name: AccountZone['assumed'][number]) => (zone.assumed.includes(name) ? 'assumed' : 'recorded');
  const defaultFactors = Number(zone.assumed.includes('density')) + Number(zone.assumed.includes('shade'));
  return {
    plantCoefficient: zone.plantFactor * zone.density * zone.shade,
    rawMm: zone.rawMm,
    plantRelativeSd: Math.hypot(
      defaultRelativeSd.plantFactor[assumed('plantFactor')],
      Math.sqrt(defaultFactors) * defaultRelativeSd.densityOrShade,
    ),
    storageRelativeSd: defaultRelativeSd.rootStorage[assumed('rawMm')],
  };
}
