import { litresFrom, type VolumeUnit } from '@rillbook/units/volume.js';

/** A tier of a supplier's rates, as it is kept. */
export interface PriceTier {
  /** YYYY-MM-DD */
  readonly effectiveFrom: string;
  readonly fixed: number | null;
  readonly tier: number;
  readonly upTo: number | null;
  readonly upToIs: string | null;
  readonly unit: string;
  readonly price: number;
}

/** What a meter says that its water costs. */
export interface MeterPrice {
  readonly unit: string;
  readonly pricePerUnit: number | null;
}

/** Where the price of a property's water in a month comes from. */
export interface PriceInput {
  /** YYYY-MM */
  readonly month: string;
  readonly tiers: readonly PriceTier[];
  readonly meters: readonly MeterPrice[];
}

/** A volume in a month, and what the month allowed; an allowance that is not known is null. [L] */
export interface MonthVolume {
  readonly litres: number;
  readonly allowedLitres: number | null;
}

/** A tier in litres and money per litre; the last has no end. */
interface Step {
  readonly endLitres: number;
  readonly perLitre: number;
}

/** The tiers in force on a month's first day, the lowest first: the newest schedule that had begun. */
export function tiersInForce(tiers: readonly PriceTier[], month: string): readonly PriceTier[] {
  const first = `${month}-01`;
  const begun = tiers.filter((tier) => tier.effectiveFrom <= first);
  const newest = begun.reduce((latest, tier) => (tier.effectiveFrom > latest ? tier.effectiveFrom : latest), '');
  return begun.filter((tier) => tier.effectiveFrom === newest).sort((a, b) => a.tier - b.tier);
}

/**
 * Steps of a schedule; null when a tier's end is not known, which is so for shares of an allowance that is not known. A schedule whose
 * last tier has an end goes on at that tier's price: the supplier printed none for more.
 */
function stepsOf(tiers: readonly PriceTier[], allowedLitres: number | null): readonly Step[] | null {
  const steps: Step[] = [];
  for (const [index, tier] of tiers.entries()) {
    const endLitres = index === tiers.length - 1 ? Number.POSITIVE_INFINITY : endOf(tier, allowedLitres);
    if (endLitres === null) return null;
    steps.push({ endLitres, perLitre: perLitre(tier.price, tier.unit) });
  }
  return steps;
}

function endOf(tier: PriceTier, allowedLitres: number | null): number | null {
  if (tier.upTo === null) return Number.POSITIVE_INFINITY;
  if (tier.upToIs !== 'share of allowance') return litresFrom(tier.upTo, tier.unit as VolumeUnit);
  return allowedLitres === null ? null : tier.upTo * allowedLitres;
}

const perLitre = (price: number, unit: string): number => price / litresFrom(1, unit as VolumeUnit);

/** The price that the meters state, where all that state one state the same. [money/L] */
function meterPrice(meters: readonly MeterPrice[]): number | null {
  const stated = meters.filter((meter) => meter.pricePerUnit !== null).map((meter) => perLitre(meter.pricePerUnit!, meter.unit));
  const [first] = stated;
  return first !== undefined && stated.every((price) => Math.abs(price - first) <= 1e-9 * first) ? first : null;
}

/**
 * What one litre more or less costs at a volume. [money/L]
 *
 * From the supplier's rates; else, where the supplier has none for the month, what the property's meters state; else null.
 *
 * Where a tier ends at a share of an allowance that is not known, the lowest tier's price is taken: a saving is not to be overstated.
 */
export function marginalPricePerLitre(input: PriceInput, at: MonthVolume | null): number | null {
  const tiers = tiersInForce(input.tiers, input.month);
  if (!tiers.length) return meterPrice(input.meters);
  const steps = at && stepsOf(tiers, at.allowedLitres);
  if (!steps) return perLitre(Math.min(...tiers.map((tier) => tier.price / litresFrom(1, tier.unit as VolumeUnit))), 'L');
  return (steps.find((step) => at.litres < step.endLitres) ?? steps.at(-1)!).perLitre;
}

/**
 * What a month's volume costs, the fixed charge included. [money]
 *
 * Null when nothing states a price, or a tier ends at a share of an allowance that is not known.
 */
export function costOfVolume(input: PriceInput, volume: MonthVolume): number | null {
  const tiers = tiersInForce(input.tiers, input.month);
  if (!tiers.length) {
    const stated = meterPrice(input.meters);
    return stated === null ? null : stated * volume.litres;
  }
  const steps = stepsOf(tiers, volume.allowedLitres);
  if (!steps) return null;
  let from = 0;
  let cost = Math.max(...tiers.map((tier) => tier.fixed ?? 0));
  for (const { endLitres, perLitre: price } of steps) {
    cost += Math.max(0, Math.min(volume.litres, endLitres) - from) * price;
    from = Math.max(from, endLitres);
  }
  return cost;
}
