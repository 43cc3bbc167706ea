import { costOfVolume, type MeterPrice, marginalPricePerLitre, type MonthVolume, type PriceTier, tiersInForce } from './price.js';

/** What water costs under one supplier's rates. */
export interface Prices {
  /** all that the prices are taken from */
  readonly tiers: readonly PriceTier[];
  /** the tiers that set a month's prices, the lowest first; none where the meters state them */
  inForce(month: string): readonly PriceTier[];
  /** what one litre more or less costs in a month, at a volume where it is known; null when nothing states a price [money/L] */
  marginalPerLitre(month: string, meters: readonly MeterPrice[], at?: MonthVolume | null): number | null;
  /** what a month's volume costs, the fixed charge included; null when not known [money] */
  costOf(month: string, meters: readonly MeterPrice[], volume: MonthVolume): number | null;
}

/** The prices of a supplier's tiers; without tiers, what the meters state. */
export function pricesOfTiers(tiers: readonly PriceTier[]): Prices {
  return {
    tiers,
    inForce: (month) => tiersInForce(tiers, month),
    marginalPerLitre: (month, meters, at = null) => marginalPricePerLitre({ month, tiers, meters }, at),
    costOf: (month, meters, volume) => costOfVolume({ month, tiers, meters }, volume),
  };
}
