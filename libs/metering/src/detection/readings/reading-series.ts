import type { ReadingJudgement } from '../../intervals/judge-reading.js';

/** A register at an instant, as a local day number with the elapsed share of the day. */
export interface SeriesReading {
  readonly localDay: number;
  readonly register: number;
}

/**
 * The readings of one meter between two swaps, in order of time. `demandLitres` is what plants may need or settings put out between two
 * instants, whichever is more, and what people use on a mixed meter; null where nobody can say. `programmedLitres` is what settings alone put
 * out, null where they are not known: a register may stand still when nothing was programmed, however dry it was. `others` are meters of the
 * same property or route.
 */
export interface ReadingSeries {
  readonly meterId: string;
  readonly digits: number | null;
  readonly litresPerRegisterUnit: number;
  readonly readings: readonly SeriesReading[];
  readonly others: readonly { readonly meterId: string; readonly readings: readonly SeriesReading[] }[];
  readonly demandLitres: ((fromLocalDay: number, toLocalDay: number) => number | null) | null;
  readonly programmedLitres?: ((fromLocalDay: number, toLocalDay: number) => number | null) | null;
}

/** What a reading of a series looks like: as beside the last good one, or `first`, or the register of another meter. */
export type SeriesJudgement = ReadingJudgement | 'first' | 'another meter';

/**
 * A reading of a series with its judgement, as it stands after the last of them. `seenLocalDay` is that of the newest reading that was needed
 * for it; `settledLocalDay` that of the reading which showed that it was wrong (`isRight` false) or right after all (true), null while open.
 */
export interface JudgedInSeries extends SeriesReading {
  readonly judgement: SeriesJudgement;
  readonly previous: SeriesReading | null;
  readonly litres: number | null;
  readonly likelyRegister: number | null;
  readonly factor: number | null;
  readonly otherMeterId: string | null;
  readonly seenLocalDay: number;
  readonly settledLocalDay: number | null;
  readonly isRight: boolean | null;
}
