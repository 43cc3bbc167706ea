import type { Quantity } from '@rillbook/units/quantity.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { inputKey } from '../uncertainty/input-share.js';
import { exactly } from '../uncertainty/uncertain-litres.js';
import { absence } from '../volumes/absence.js';
import { contractAllowance } from '../volumes/contract-allowance.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { fillMissingDays } from '../volumes/fill-missing-days.js';
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
  const eto = Array.from({ length: month.days }, (_, day) => etoOfDay(month.weather, month.firstDay + day));
  const filled = fillMissingDays(
    eto.map((value, day) => ({
      litres: value ?? 0,
      knownShare: value === null ? 0 : 1,
      etWeight: month.etWeights[day] ?? 1,
      neededLitres: null,
    })),
  );
  if (filled.litres === null) return absent(absence('weather-missing', { missingShare: filled.missingShare, days: month.days }));
  const irrigatedAreaM2 = zones.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const area = {
    etaf: allowance.etaf,
    irrigatedAreaM2: irrigatedAreaM2 as Quantity<'m2'>,
    specialLandscapeAreaM2: Math.min(of.specialLandscapeAreaM2, irrigatedAreaM2) as Quantity<'m2'>,
  };
  const litres = ordinanceAllowance(filled.litres as Quantity<'mm'>, area);
  const perMm = filled.litres > 0 ? litres / filled.litres : 0;
  const from = month.firstDay - month.weather.firstDay;
  const etoSd = eto.reduce<number>((sum, value, day) => sum + (value ?? 0) * (month.weather.etoRelativeSd[from + day] ?? 0), 0);
  const ofZone = (zone: AccountZone) =>
    ordinanceAllowance(filled.litres as Quantity<'mm'>, {
      ...area,
      irrigatedAreaM2: zone.areaM2 as Quantity<'m2'>,
      specialLandscapeAreaM2: 0 as Quantity<'m2'>,
    });
  const parts = new Map([
    [inputKey('eto', null), perMm * etoSd],
    [inputKey('filledWeather', null), perMm * filled.filledLitres * defaultRelativeSd.filled],
    ...zones.map((zone) => [inputKey('area', zone.id), ofZone(zone) * areaSd(zone)] as const),
  ]);
  const estimated = eto.reduce<number>((sum, value, day) => sum + (month.weather.filledDays?.has(from + day) ? (value ?? 0) : 0), 0);
  return known({ litres, parts }, perMm * (filled.filledLitres + estimated));
}
