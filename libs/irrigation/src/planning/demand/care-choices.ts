/** Plant factors that differ by less are one choice: less than a step between water-need categories (0.2, 0.5, 0.8). [–] */
const LEAST_DIFFERENCE = 0.2;

/** Plants of a zone: their share of the cover, in any unit, and their plant factor with density and shade. */
export interface CoveringPlants {
  readonly cover: number;
  readonly plantFactor: number;
}

/** One way to water a zone whose plants do not fit together. [L/d] */
export interface CareChoice {
  readonly choice: 'thirstiest' | 'middle' | 'modest';
  readonly plantFactor: number;
  readonly litresPerDay: number;
}

/**
 * What a zone would be given for its thirstiest plants, for the mean of its cover, and for its most modest ones.
 *
 * Litres are those of the zone's own need times the choice's plant factor over the zone's: rain is taken to count alike for all, so that the
 * litres between the choices are an upper bound in rainy months.
 *
 * @param plants - The plants. [–]
 * @param litresPerDay - Need of the zone as it is planned. [L/d]
 * @param zoneFactor - Plant factor that this need was reckoned with, density and shade in it. [–]
 * @returns The three choices, or null where the plants fit together, or nobody knows two of them. [L/d]
 */
export function careChoices(plants: readonly CoveringPlants[], litresPerDay: number, zoneFactor: number): readonly CareChoice[] | null {
  const growing = plants.filter(({ cover }) => cover > 0);
  const factors = growing.map(({ plantFactor }) => plantFactor);
  if (!(zoneFactor > 0) || factors.length < 2 || Math.max(...factors) - Math.min(...factors) < LEAST_DIFFERENCE) return null;
  const cover = growing.reduce((sum, each) => sum + each.cover, 0);
  const mean = growing.reduce((sum, each) => sum + each.cover * each.plantFactor, 0) / cover;
  const at = (choice: CareChoice['choice'], plantFactor: number): CareChoice => ({
    choice,
    plantFactor,
    litresPerDay: (litresPerDay * plantFactor) / zoneFactor,
  });
  return [at('thirstiest', Math.max(...factors)), at('middle', mean), at('modest', Math.min(...factors))];
}
