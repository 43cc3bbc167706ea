/** As many as are named, and the share below which an input is floating-point dust: as `rankedInputs`. */
const [MOST_NAMED, SMALLEST_SHARE] = [5, 1e-9];

/** The places and sizes of the largest effects so far. */
const places = new Int32Array(MOST_NAMED);
const sizes = new Float64Array(MOST_NAMED);

/**
 * Standard deviation of a difference of two volumes, and the inputs that it comes from, the largest first: `standardDeviation` and
 * `rankedInputs` on columns.
 *
 * σ² = Σ (moreᵢ − lessᵢ)²
 *
 * @param order - Places of the inputs in the order in which they are summed. [–]
 * @param more - Effect of each input on the volume that is taken from. [L], one per place
 * @param less - Effect of each input on the volume that is taken away. [L], one per place
 * @param written - Written to. [code]
 * @param written.numbers - From `at` on: the standard deviation, then five shares of the variance. [L] and [–]
 * @param written.at - Where to begin in `numbers`. [–]
 * @param written.causes - From `causesAt` on: the places of the five inputs; -1 for none. [–]
 * @param written.causesAt - Where to begin in `causes`. [–]
 * @returns Nothing: `written` holds the result. [–]
 * @source JCGM 100:2008, Eq. 10.
 */
export function rankedEffects(
  order: Int32Array,
  more: Float64Array,
  less: Float64Array,
  written: { readonly numbers: Float64Array; readonly at: number; readonly causes: Int16Array; readonly causesAt: number },
): void {
  const { numbers, at, causes, causesAt } = written;
  let variance = 0;
  let named = 0;
  let least = -1;
  for (let each = 0; each < order.length; each += 1) {
    const place = order[each] as number;
    const effect = (more[place] as number) - (less[place] as number);
    variance += effect * effect;
    const size = Math.abs(effect);
    if (named === MOST_NAMED && !(size > least)) continue;
    if (named < MOST_NAMED) named += 1;
    let rank = named - 1;
    for (; rank > 0 && size > (sizes[rank - 1] as number); rank -= 1) {
      sizes[rank] = sizes[rank - 1] as number;
      places[rank] = places[rank - 1] as number;
    }
    sizes[rank] = size;
    places[rank] = place;
    least = sizes[named - 1] as number;
  }
  numbers[at] = Math.sqrt(variance);
  let isDust = false;
  for (let rank = 0; rank < MOST_NAMED; rank += 1) {
    const square = rank < named ? (sizes[rank] as number) * (sizes[rank] as number) : 0;
    isDust ||= !(square > SMALLEST_SHARE * variance);
    numbers[at + 1 + rank] = isDust ? 0 : square / variance;
    causes[causesAt + rank] = isDust ? -1 : (places[rank] as number);
  }
}
