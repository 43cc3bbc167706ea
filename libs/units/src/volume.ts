import { DomainError } from './domain-error.js';
import { finiteQuantity, type Quantity } from './quantity.js';

/** A unit of volume as meters and bills print it: CCF and HCF are both a hundred cubic feet, kgal a thousand US gallons. */
export type VolumeUnit = 'CCF' | 'HCF' | 'kgal' | 'gal' | 'ft3' | 'm3' | 'L';

/** Litres in a US liquid gallon: exact, 231 cubic inches. */
const LITRES_PER_GALLON = 3.785411784;

/** Litres in a cubic foot: exact, from 1 ft = 3.048 dm. */
const LITRES_PER_CUBIC_FOOT = 3.048 ** 3;

/** Litres in each unit that a meter may count in. */
const LITRES_PER: Readonly<Record<VolumeUnit, number>> = {
  CCF: 100 * LITRES_PER_CUBIC_FOOT,
  HCF: 100 * LITRES_PER_CUBIC_FOOT,
  kgal: 1000 * LITRES_PER_GALLON,
  gal: LITRES_PER_GALLON,
  ft3: LITRES_PER_CUBIC_FOOT,
  m3: 1000,
  L: 1,
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
 * Volume: any unit of a meter or bill to L.
 *
 * @param value - The volume in that unit. [any]
 * @param unit - The unit, as the import folder spells it. [code]
 * @returns The same volume. [L]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite; `VOLUME_UNIT_UNKNOWN` when the unit is none of the list.
 * @source NIST Special Publication 811 (2008), Appendix B.8: 1 gal = 3.785 411 784 L, 1 ft³ = 28.316 846 592 L.
 * @example litresFrom(1, 'CCF') // 2831.6846592, 748.05 gal
 */
export function litresFrom(value: number, unit: VolumeUnit): Quantity<'L'> {
  return finiteQuantity(value * litresPer(unit), 'VOLUME_OUT_OF_DOMAIN');
}

/**
 * Volume: L to any unit of a meter or bill.
 *
 * @param volume - The volume to convert. [L]
 * @param unit - The unit wanted, as the import folder spells it. [code]
 * @returns The same volume in that unit. [any]
 * @throws {DomainError} `VOLUME_OUT_OF_DOMAIN` when not finite; `VOLUME_UNIT_UNKNOWN` when the unit is none of the list.
 */
export function volumeIn<Unit extends VolumeUnit>(volume: Quantity<'L'>, unit: Unit): Quantity<Unit> {
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

function litresPer(unit: VolumeUnit): number {
  if (!isVolumeUnit(unit)) throw new DomainError('VOLUME_UNIT_UNKNOWN', { unit });
  return LITRES_PER[unit];
}
