import type { Quantity } from '@rillbook/units/quantity.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { exactly } from '../uncertainty/uncertain-litres.js';
import { absence } from '../volumes/absence.js';
import { contractAllowance } from '../volumes/contract-allowance.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { fillMissingDays, type FilledVolume, nothingMissing } from '../volumes/fill-missing-days.js';
import { etoOfDay } from '../volumes/weather-series.js';
import { ordinanceAllowance } from '../volumes/ordinance-allowance.js';
import type { AccountZone, Allowance } from './account-input.js';
import type { CoveredMonth } from './needed/covered-month.js';
import { areaSd } from './needed/needed-of-zone.js';

/** An allowance with the special landscape area that belongs to the zones at hand. */
export interface ZonesAllowance {
  readonly allowance: Allowance | null;
  readonly specialLandscapeAreaM2: number;
}

/**
 * What ordinance or contract allows these zones, to date.
 *
 * @param zones - All irrigated zones that the allowance is for. [m2]
 * @param of - The property's allowance and the special landscape area among these zones. [code]
 * @param month - The covered days and the weather. [mm]
 * @returns The volume; under a contract the whole table's month by share of days. [L]
 * @throws {DomainError} `CONTRACT_TABLE_INVALID` or `ORDINANCE_OUT_OF_DOMAIN` when the allowance cannot be read.
 */
export function allowedOfZones(zones: readonly AccountZone[], of: ZonesAllowance, month: CoveredMonth): Figure {
  const { allowance } = of;
  if (!allowance) return absent(absence('no-allowance'));
  if (month.days === 0) return absent(absence('no-complete-day'));
  if (allowance.from === 'contract')
    return known(exactly(contractAllowance(allowance.litresPerMonth, month.month, month.days, month.daysInMonth)));
  if (zones.length === 0) return absent(absence('no-zones'));
  const { filled, sd, filledFrom } = etoOfMonth(month);
  if (filled.litres === null) return absent(absence('weather-missing', { missingShare: filled.missingShare, days: month.days }));
  const irrigatedAreaM2 = zones.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const area = {
    etaf: allowance.etaf,
    irrigatedAreaM2: irrigatedAreaM2 as Quantity<'m2'>,
    specialLandscapeAreaM2: Math.min(of.specialLandscapeAreaM2, irrigatedAreaM2) as Quantity<'m2'>,
  };
  const litres = ordinanceAllowance(filled.litres as Quantity<'mm'>, area);
  const perMm = filled.litres > 0 ? litres / filled.litres : 0;
  const ofZone = (zone: AccountZone) =>
    ordinanceAllowance(filled.litres as Quantity<'mm'>, {
      ...area,
      irrigatedAreaM2: zone.areaM2 as Quantity<'m2'>,
      specialLandscapeAreaM2: 0 as Quantity<'m2'>,
    });
  const weatherInputs = [month.inputs.input('eto', null), month.inputs.input('filledWeather', null)];
  const inputs = [...weatherInputs, ...zones.map((zone) => month.inputs.input('area', zone.id))];
  const filledSd = perMm * filled.filledLitres * defaultRelativeSd.filled;
  const effects = [perMm * sd, filledSd, ...zones.map((zone) => ofZone(zone) * areaSd(zone))];
  return known({ litres, inputs, effects }, perMm * (filled.filledLitres + filledFrom));
}

// Reference ET of the covered days, the sum of its days' standard deviations, and how much of it the station did not measure.
function etoOfMonth({ weather, firstDay, days, etWeights }: CoveredMonth): { filled: FilledVolume; sd: number; filledFrom: number } {
  const { etoMm, etoRelativeSd, filledDays } = weather;
  const from = firstDay - weather.firstDay;
  let [sum, sd, filledFrom] = [0, 0, 0];
  let allKnown = true;
  for (let at = from; at < from + days; at += 1) {
    const eto = etoMm[at] ?? Number.NaN;
    if (Number.isNaN(eto)) {
      allKnown = false;
      continue;
    }
    sum += eto;
    sd += eto * (etoRelativeSd[at] ?? 0);
    if (filledDays?.has(at)) filledFrom += eto;
  }
  const partly = () =>
    Array.from(etWeights, (etWeight, day) => {
      const eto = etoOfDay(weather, firstDay + day);
      return { litres: eto ?? 0, knownShare: eto === null ? 0 : 1, etWeight, neededLitres: null };
    });
  return { filled: allKnown ? nothingMissing(sum) : fillMissingDays(partly()), sd, filledFrom };
}
