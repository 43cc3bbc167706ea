/**
 * What a repeated pattern of waterings does to a root zone once it has settled: what stays unmet, and what goes below the roots.
 *
 * Each step waters first, then the plants use `need` a day for `gaps` days. Water beyond what the roots lack is lost; what the plants want
 * beyond `storage` stays unmet. The steps map depletion D to clip(D + t, lo, hi); with less water than need the settled depletion is what one
 * round makes of a full depletion, with more what it makes of none: two rounds are exact.
 *
 * @param gaps - Days from each watering to the next, in a round that repeats. [d]
 * @param waterings - Water of each step, as many as gaps. [L] or [min]
 * @param need - Use of a day, in the unit of the waterings. [L/d] or [min/d]
 * @param storage - What the roots can be short of before the plants suffer, in the same unit; infinite where nobody knows. [L] or [min]
 * @param written - Takes unmet and lost of one round. [L] or [min]
 * @returns Nothing; the answer is written. [–]
 */
export function steadyWater(
  gaps: ArrayLike<number>,
  waterings: ArrayLike<number>,
  need: number,
  storage: number,
  written: Float64Array,
): void {
  const { length } = gaps;
  let [days, water] = [0, 0];
  for (let step = 0; step < length; step += 1) {
    days += gaps[step] as number;
    water += waterings[step] as number;
  }
  // Where nothing limits the storage, only sums matter.
  if (storage === Number.POSITIVE_INFINITY || length === 0) {
    written[0] = Math.max(0, need * days - water);
    written[1] = Math.max(0, water - need * days);
    return;
  }
  let depletion = water < need * days ? storage : 0;
  let [unmet, lost] = [0, 0];
  for (let round = 0; round < 2; round += 1) {
    unmet = 0;
    lost = 0;
    for (let step = 0; step < length; step += 1) {
      depletion -= waterings[step] as number;
      if (depletion < 0) {
        lost -= depletion;
        depletion = 0;
      }
      depletion += need * (gaps[step] as number);
      if (depletion > storage) {
        unmet += depletion - storage;
        depletion = storage;
      }
    }
  }
  written[0] = unmet;
  written[1] = lost;
}
