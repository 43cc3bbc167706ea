import type { ChangeScore } from './change-scores.js';

/** Flow cannot fall below nothing, beyond what it is known to: this, or two standard deviations. Common practice, no source. */
const DOUBT = 0.1;
/** How often a zone that changed passes nothing, less, or more: half of them a valve or a wire, less and more alike. Assumptions. */
const NOTHING = 0.4;
/** Less: any share alike. More: any factor alike, so that a small one is likelier. Common practice, no source. */
const LESS = { weight: 0.25, from: -0.9, to: -0.2, density: () => 1 / 0.7 } as const;
const MORE = { weight: 0.35, from: 0.2, to: 4, density: (change: number) => 1 / (change * Math.log(4 / 0.2)) } as const;
/** What else may happen counts as this much. */
const OTHER = 1e-4;

/**
 * Whether a change is one that a zone can have: no zone passes less than nothing.
 *
 * @param score - The change and its standard deviation. [–]
 * @returns False where only a fault of the model can say so. [–]
 */
export function isPossible(score: ChangeScore): boolean {
  const { change, sd } = score;
  return change >= -1 - Math.max(DOUBT, 2 * sd);
}

/**
 * How likely a zone's change is by what happens to zones, as logarithm: usage by the hour often cannot tell zones of one hour apart, yet of one it asks
 * that it pass less than nothing, and of another that it stand still.
 *
 * ln ∫ p(δ) exp(−½ ((δ̂ − δ) / sd)²) dδ, p a mixture of nothing (δ = −1), less and more; where p is even about δ̂ a part gives p(δ̂) sd √(2π).
 *
 * @param score - The change δ̂ and its standard deviation. [–]
 * @returns Logarithm of the likelihood, relative to the best that the usage lets be; −∞ for what cannot be. [–]
 * @source Marginal likelihood by Laplace's method: MacKay (2003), Information Theory, Inference, and Learning Algorithms, 28.1; from memory.
 */
export function logOddsOf(score: ChangeScore): number {
  if (!isPossible(score)) return Number.NEGATIVE_INFINITY;
  const { change, sd } = score;
  const fits = (own: number): number => Math.exp(-(((change - own) / sd) ** 2) / 2);
  const parts = [LESS, MORE].map(({ weight, from, to, density }) => {
    const nearest = Math.min(to, Math.max(from, change));
    return weight * density(nearest) * sd * Math.sqrt(2 * Math.PI) * fits(nearest);
  });
  return Math.log(OTHER + NOTHING * fits(-1) + parts.reduce((sum, part) => sum + part, 0));
}
