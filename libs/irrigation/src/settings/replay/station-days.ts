/** Why a day cannot be replayed: nothing known, or a controller that computes its own run times. */
export type UnknownDay = 'settings-not-known' | 'settings-from-weather';

/** Days of a replay that are told of by themselves, as those of a month: `from` counts from the first day that is replayed. */
export interface DayPart {
  readonly from: number;
  readonly days: number;
}

/**
 * One station's replay: minutes and begun runs per local day (null on an unknown day), their sums over the days that are known, and the
 * programs that ran it.
 */
export interface StationReplay {
  readonly minutes: readonly (number | null)[];
  readonly runs: readonly (number | null)[];
  /** minutes per local day as the settings have them, whatever is not known of a day [min] */
  readonly laidMinutes: Float64Array;
  readonly totalMinutes: number;
  readonly totalRuns: number;
  readonly programs: readonly string[];
}

/** The place of the days that are in no part. */
const NO_PART = 0;
const LEAST_ROWS = 24;

/** Minutes and runs of all stations by day, a row for each station in one block; and which programs ran each in which part of the days. */
export class StationDays {
  private readonly rows = new Map<number, number>();
  /** by row, then by place of the part */
  private readonly programs: string[][][] = [];
  private readonly openUntil: number[] = [];
  private readonly places: Uint16Array;
  minutes = new Float64Array(0);
  runs = new Float64Array(0);

  /**
   * Room for stations.
   *
   * @param days - How many days are replayed. [d]
   * @param parts - The parts that will be asked for, none of which shares a day with another. [d]
   */
  constructor(
    readonly days: number,
    private readonly parts: readonly DayPart[],
  ) {
    this.places = new Uint16Array(days);
    parts.forEach(({ from, days: own }, at) => this.places.fill(at + 1, from, from + own));
  }

  /**
   * Where a station's days begin in `minutes` and `runs`.
   *
   * @param station - The station. [code]
   * @returns The place of its first day. [–]
   */
  rowOf(station: number): number {
    const present = this.rows.get(station);
    if (present !== undefined) return present * this.days;
    const row = this.rows.size;
    this.rows.set(station, row);
    this.programs.push([]);
    this.openUntil.push(Number.NEGATIVE_INFINITY);
    if ((row + 1) * this.days > this.minutes.length) {
      const [minutes, runs] = [this.minutes, this.runs];
      this.minutes = new Float64Array((2 * row + LEAST_ROWS) * this.days);
      this.runs = new Float64Array(this.minutes.length);
      this.minutes.set(minutes);
      this.runs.set(runs);
    }
    return row * this.days;
  }

  /**
   * The part that a day is in.
   *
   * @param day - The day, from the first on. [d]
   * @returns A number that is the same for all days of a part. [–]
   */
  placeOf(day: number): number {
    return this.places[day] ?? NO_PART;
  }

  /**
   * Notes that a program ran a station.
   *
   * @param from - Where the station's days begin. [–]
   * @param day - The day, from the first on. [d]
   * @param program - The program. [code]
   * @returns Nothing. [–]
   */
  ranBy(from: number, day: number, program: string): void {
    const ofParts = this.programs[from / this.days] as string[][];
    const programs = (ofParts[this.placeOf(day)] ??= []);
    if (programs.includes(program)) return;
    programs.push(program);
    programs.sort();
  }

  /**
   * Takes a valve that another program may hold open.
   *
   * @param from - Where the station's days begin. [–]
   * @param begin - When it is wanted. [min]
   * @param end - Until when. [min]
   * @returns From when on it is free. [min]
   */
  take(from: number, begin: number, end: number): number {
    const row = from / this.days;
    const free = Math.max(begin, this.openUntil[row] as number);
    this.openUntil[row] = Math.max(free, end);
    return free;
  }

  /**
   * The replays of all stations over all days.
   *
   * @param unknown - By day why it is not known; null where it is. [code]
   * @returns One for each station that any program ran. [min]
   */
  whole(unknown: readonly (UnknownDay | null)[]): ReadonlyMap<number, StationReplay> {
    return this.replays(0, unknown, (ofParts) => ofParts);
  }

  /**
   * The replays of the stations that ran in a part of the days.
   *
   * @param at - The part's place among those that were asked for. [–]
   * @param unknown - By day of the part why it is not known; null where it is. [code]
   * @returns One for each station that any program ran in it. [min]
   */
  part(at: number, unknown: readonly (UnknownDay | null)[]): ReadonlyMap<number, StationReplay> {
    return this.replays((this.parts[at] as DayPart).from, unknown, (ofParts) => {
      const programs = ofParts[at + 1];
      return programs ? [programs] : null;
    });
  }

  private replays(
    first: number,
    unknown: readonly (UnknownDay | null)[],
    ranBy: (ofParts: readonly (readonly string[])[]) => DaysOfStation['programs'] | null,
  ): ReadonlyMap<number, StationReplay> {
    const { minutes, runs, days } = this;
    const allKnown = unknown.every((reason) => reason === null);
    const replays = new Map<number, StationReplay>();
    for (const [station, row] of this.rows) {
      const programs = ranBy(this.programs[row] as string[][]);
      if (programs) replays.set(station, new StationInDays({ minutes, runs, from: row * days + first, unknown, programs }, allKnown));
    }
    return replays;
  }
}

interface DaysOfStation {
  readonly minutes: Float64Array;
  readonly runs: Float64Array;
  readonly from: number;
  readonly unknown: readonly (UnknownDay | null)[];
  /** lists of programs, which may name one more than once */
  readonly programs: readonly (readonly string[])[];
}

/** One station's part of the block: the days are lists when somebody asks for them. */
class StationInDays implements StationReplay {
  readonly totalMinutes: number;
  readonly totalRuns: number;

  constructor(
    private readonly of: DaysOfStation,
    allKnown: boolean,
  ) {
    let [totalMinutes, totalRuns] = [0, 0];
    for (let day = 0; day < of.unknown.length; day += 1) {
      if (!allKnown && of.unknown[day] !== null) continue;
      totalMinutes += of.minutes[of.from + day] as number;
      totalRuns += of.runs[of.from + day] as number;
    }
    this.totalMinutes = totalMinutes;
    this.totalRuns = totalRuns;
  }

  get programs(): readonly string[] {
    const { programs } = this.of;
    return programs.length === 1 ? (programs[0] as readonly string[]) : [...new Set(programs.flat())].sort();
  }

  get laidMinutes(): Float64Array {
    return this.of.minutes.subarray(this.of.from, this.of.from + this.of.unknown.length);
  }

  get minutes(): readonly (number | null)[] {
    return this.of.unknown.map((reason, day) => (reason === null ? (this.of.minutes[this.of.from + day] as number) : null));
  }

  get runs(): readonly (number | null)[] {
    return this.of.unknown.map((reason, day) => (reason === null ? (this.of.runs[this.of.from + day] as number) : null));
  }
}
