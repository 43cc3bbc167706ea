/** What a crew's own visits say of its estimates. */
export interface CrewPace {
  /** What estimates are multiplied with. [–] */
  readonly factor: number;
  /** How many visits that rests on; 0 where there are too few and the factor is 1. [–] */
  readonly visits: number;
}

/** One visit: how long it was expected to take and how long it took. [min] */
export interface TimedVisit {
  readonly estimateMinutes: number;
  readonly tookMinutes: number;
}

/** Fewer visits say nothing about a crew. */
const LEAST_VISITS = 8;

/** A crew is not taken for more than twice as slow or fast: beyond that its visits were left open or closed by the way. */
const SLOWEST = 2;
const FASTEST = 0.5;

/**
 * How a crew's own visits compare with their estimates: the median of the ratios, because a forgotten phone makes visits of a whole night.
 *
 * @param visits - The visits; those without a positive estimate and time are passed over. [min]
 * @returns The factor and how many visits it rests on. [–]
 */
export function crewPace(visits: readonly TimedVisit[]): CrewPace {
  const ratios = visits
    .filter(({ estimateMinutes, tookMinutes }) => estimateMinutes > 0 && tookMinutes > 0)
    .map(({ estimateMinutes, tookMinutes }) => tookMinutes / estimateMinutes)
    .sort((one, other) => one - other);
  if (ratios.length < LEAST_VISITS) return { factor: 1, visits: 0 };
  const middle = ratios.length / 2;
  const median = ((ratios[Math.ceil(middle) - 1] as number) + (ratios[Math.floor(middle)] as number)) / 2;
  return { factor: Math.min(SLOWEST, Math.max(FASTEST, median)), visits: ratios.length };
}
