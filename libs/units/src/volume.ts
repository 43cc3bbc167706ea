import { DomainError } from './domain-error.js';
import { finiteQuantity, type Quantity } from './quantity.js';

/** A unit of volume as meters and bills print it: CCF and HCF are both a hundred cubic feet, kgal a thousand US gallons. */
export type VolumeUnit = 'CCF' | 'HCF' | 'kgal' | 'gal' | 'ft3' | 'm3' | 'L';

/** A unit of volume of budgets, farms and other countries, in which no meter of the import folder counts. */
export type OtherVolumeUnit = 'acre-ft' | 'acre-in' | 'imperial gal' | 'mL';

/** Litres in a US liquid gallon: exact, 231 cubic inches. */
const LITRES_PER_GALLON = 3.785411784;

/** Litres in an imperial gallon: exact, by the United Kingdom's Units of Measurement Regulations 1995. A fifth more than the US gallon. */
const LITRES_PER_IMPERIAL_GALLON = 4.54609;

/** Litres in a cubic foot: exact, from 1 ft = 3.048 dm. */
const LITRES_PER_CUBIC_FOOT = 3.048 ** 3;

/** Square feet in an acre: exact, 66 by 660 ft. */
const SQUARE_FEET_PER_ACRE = 43_560;

/** Inches in a foot. */
const INCHES_PER_FOOT = 12;

/** Litres in each unit. */
const LITRES_PER: Readonly<Record<VolumeUnit | OtherVolumeUnit, number>> = {
  CCF: 100 * LITRES_PER_CUBIC_FOOT,
  HCF: 100 * LITRES_PER_CUBIC_FOOT,
  kgal: 1000 * LITRES_PER_GALLON,
  gal: LITRES_PER_GALLON,
  ft3: LITRES_PER_CUBIC_FOOT,
  m3: 1000,
  L: 1,
  'acre-ft': SQUARE_FEET_PER_ACRE * LITRES_PER_CUBIC_FOOT,
  'acre-in': (SQUARE_FEET_PER_ACRE / INCHES_PER_FOOT) * LITRES_PER_CUBIC_FOOT,
  'imperial gal': LITRES_PER_IMPERIAL_GALLON,
  mL: 0.001,
};

/** The units that a meter may count in, in the order of the import folder's list. */
export const volumeUnits: readonly VolumeUnit[] = ['CCF', 'HCF', 'kgal', 'gal', 'ft3', 'm3', 'L'];

/**
 * Whether a word names a unit of volume, exactly as the import folder spells it.
 *
 * @param word - The word as read. [code]
 * @returns True when it is one of `volumeUnits`. [–]
 */
export function isVolumeUnit(word: string): word is VolumeUnit {
  return (volumeUnits as readonly string[]).includes(word);
}

/**
 * Volume of water given in L.
 *
 * @param value - The number as measured or read. [L]
 * @returns The same as a quantity. [L]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite.
 */
export function litres(value: number): Quantity<'L'> {
  return finiteQuantity(value, 'VOLUME_OUT_OF_DOMAIN');
}

/**
 * Volume: any unit of a meter, bill or budget to L.
 *
 * @param value - The volume in that unit. [any]
 * @param unit - The unit; that of a meter as the import folder spells it. [code]
 * @returns The same volume. [L]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite; `VOLUME_UNIT_UNKNOWN` when the unit is none of the list.
 * @source NIST Special Publication 811 (2008), Appendix B.8: 1 gal = 3.785 411 784 L, 1 ft³ = 28.316 846 592 L, imperial gallon 4.546 09 L.
 * @example litresFrom(1, 'CCF') // 2831.6846592, 748.05 gal
 */
export function litresFrom(value: number, unit: VolumeUnit | OtherVolumeUnit): Quantity<'L'> {
  return finiteQuantity(value * litresPer(unit), 'VOLUME_OUT_OF_DOMAIN');
}

/**
 * Volume: L to any unit of a meter, bill or budget.
 *
 * @param volume - The volume to convert. [L]
 * @param unit - The unit wanted; that of a meter as the import folder spells it. [code]
 * @returns The same volume in that unit. [any]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite; `VOLUME_UNIT_UNKNOWN` when the unit is none of the list.
 */
export function volumeIn<Unit extends VolumeUnit | OtherVolumeUnit>(volume: Quantity<'L'>, unit: Unit): Quantity<Unit> {
  return finiteQuantity(volume / litresPer(unit), 'VOLUME_OUT_OF_DOMAIN');
}

/**
 * Volume: gal to L.
 *
 * @param gallons - The value to convert, in US liquid gallons. [gal]
 * @returns The same volume. [L]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite.
 */
export function litresFromGallons(gallons: number): Quantity<'L'> {
  return litresFrom(gallons, 'gal');
}

/**
 * Volume: L to gal.
 *
 * @param litres - The value to convert. [L]
 * @returns The same volume in US liquid gallons. [gal]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite.
 */
export function gallonsFromLitres(litres: Quantity<'L'>): Quantity<'gal'> {
  return volumeIn(litres, 'gal');
}

/**
 * Volume of a depth of water over an area: a millimetre on a square metre is a litre.
 *
 * @param depth - Depth of water over the whole area. [mm]
 * @param area - The area that it covers. [m2]
 * @returns The volume. [L]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite.
 */
export function litresFromDepth(depth: Quantity<'mm'>, area: Quantity<'m2'>): Quantity<'L'> {
  return finiteQuantity(depth * area, 'VOLUME_OUT_OF_DOMAIN');
}

function litresPer(unit: VolumeUnit | OtherVolumeUnit): number {
  if (!Object.hasOwn(LITRES_PER, unit)) throw new DomainError('VOLUME_UNIT_UNKNOWN', { unit });
  return LITRES_PER[unit];
}
