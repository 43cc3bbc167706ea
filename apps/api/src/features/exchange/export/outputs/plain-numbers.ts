import { gallonsFromLitres, litres } from '@rillbook/units/volume.js';
import { plainDigits } from '../../columns/number-cells.js';

/** Decimals of computed volumes and money: finer ones say nothing. */
const DECIMALS = 3;

/** A computed number in digits; blank where it is not known. */
export function plainNumber(value: number | null, decimals = DECIMALS): string {
  return value === null ? '' : plainDigits(Number(value.toFixed(decimals)));
}

/** A computed volume in US gallons; blank where it is not known. */
export function plainGallons(value: number | null): string {
  return value === null ? '' : plainNumber(gallonsFromLitres(litres(value)));
}
