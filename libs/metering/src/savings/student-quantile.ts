import { DomainError } from '@rillbook/units/domain-error.js';
import { probabilityAboveZero } from '../uncertainty/normal-probability.js';

const WIDEST = 8;
const HALVINGS = 60;
const FEWEST = 3;

/**
 * Half-width of a two-sided interval of Student's t, in standard deviations.
 *
 * t = z + (z³ + z)/4ν + (5z⁵ + 16z³ + 3z)/96ν² + (3z⁷ + 19z⁵ + 17z³ − 15z)/384ν³ + (79z⁹ + 776z⁷ + 1482z⁵ − 1920z³ − 945z)/92160ν⁴
 *
 * @param confidence - Share of cases that the interval is to hold, between 0 and 1. [–]
 * @param freedom - Degrees of freedom ν, which need not be whole. [–]
 * @returns The half-width over the standard deviation. [–]
 * @throws {DomainError} `CONFIDENCE_OUT_OF_DOMAIN` when the confidence is not between 0 and 1; `FREEDOM_OUT_OF_DOMAIN` below 3.
 * @domain ν ≥ 3: the expansion is then within 0.01 of the published table at 90 %.
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5; table 26.10.
 * @example studentQuantile(0.9, 10) // 1.812
 */
export function studentQuantile(confidence: number, freedom: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new DomainError('CONFIDENCE_OUT_OF_DOMAIN', { confidence });
  if (!(freedom >= FEWEST)) throw new DomainError('FREEDOM_OUT_OF_DOMAIN', { freedom, least: FEWEST });
  const z = normalQuantile((1 + confidence) / 2);
  const terms = [
    (z ** 3 + z) / 4,
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92_160,
  ];
  return terms.reduce((sum, term, at) => sum + term / freedom ** (at + 1), z);
}

function normalQuantile(share: number): number {
  let [low, high] = [-WIDEST, WIDEST];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (probabilityAboveZero(middle, 1) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
