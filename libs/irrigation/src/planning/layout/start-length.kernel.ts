/**
 * What one start of a program takes: its stations one after the other, round after round of cycles, each waiting for its soak. The same times as
 * `layOutStart`, which tells what runs; this is asked thousands of times while programs are fitted into the hours.
 *
 * @param minutes - Minutes of each station. [min]
 * @param cycles - Cycles of each. [–]
 * @param soaks - Pause of each between its cycles. [min]
 * @param step - Resolution of the timer: all cycles but the last are whole steps, alike. [min]
 * @param ready - As long as there are stations; written. [min]
 * @returns Minutes from the start to the end of its last run. [min]
 */
export function startLength(
  minutes: ArrayLike<number>,
  cycles: ArrayLike<number>,
  soaks: ArrayLike<number>,
  step: number,
  ready: Float64Array,
): number {
  const { length } = minutes;
  let rounds = 0;
  for (let at = 0; at < length; at += 1) {
    ready[at] = 0;
    if ((cycles[at] as number) > rounds) rounds = cycles[at] as number;
  }
  let now = 0;
  for (let round = 0; round < rounds; round += 1) {
    for (let at = 0; at < length; at += 1) {
      const whole = Math.ceil((minutes[at] as number) / (cycles[at] as number) / step - 1e-9) * step;
      const run = Math.min(whole, (minutes[at] as number) - round * whole);
      if (round >= (cycles[at] as number) || run <= 1e-9) continue;
      now = Math.max(now, ready[at] as number) + run;
      ready[at] = now + (soaks[at] as number);
    }
  }
  return now;
}
