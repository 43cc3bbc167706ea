import { probabilityAboveZero } from '../uncertainty/normal-probability.js';

/** What the organization wants to be told: a gap must be this probable, this large and this dear. */
export interface Thresholds {
  readonly minConfidence: number;
  readonly minLitres: number;
  readonly minMoney: number;
}

/** A positive amount of water with its uncertainty and price. */
export interface Weighed {
  readonly litres: number;
  readonly sdLitres: number;
  readonly pricePerLitre: number | null;
}

/** An amount that is both significant and material, with its confidence and money. */
export interface Worthy {
  readonly litres: number;
  readonly sdLitres: number;
  readonly money: number | null;
  readonly confidence: number;
}

/**
 * Whether an amount of water is worth a person's look: significant and material, in litres and, where the price is known, in money.
 *
 * @param weighed - The amount, its standard deviation and the price. [L]
 * @param thresholds - The organization's thresholds. [any]
 * @returns Amount, money and confidence, or null where any threshold is not met. [L]
 */
export function worthALook(weighed: Weighed, thresholds: Thresholds): Worthy | null {
  const { litres, sdLitres, pricePerLitre } = weighed;
  const money = pricePerLitre === null ? null : litres * pricePerLitre;
  const confidence = probabilityAboveZero(litres, sdLitres);
  const material = litres > 0 && litres >= thresholds.minLitres && (money === null || money >= thresholds.minMoney);
  return material && confidence >= thresholds.minConfidence ? { litres, sdLitres, money, confidence } : null;
}
