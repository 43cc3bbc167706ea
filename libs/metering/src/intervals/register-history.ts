import { type ReadingExpectation, type ReadingJudgement, judgeReading } from './judge-reading.js';
import { litresFrom, type VolumeUnit } from '@rillbook/units/volume.js';

/** How a meter counts, and where its register began. */
export interface MeterScale {
  readonly unit: VolumeUnit;
  readonly multiplier: number;
  readonly digits: number | null;
  readonly installedOn: string | null;
  readonly firstRegister: number | null;
}

/** A register at an instant. */
export interface RegisterAt {
  readonly readAt: Date;
  readonly register: number;
}

/** A register with what it looks like beside the last one that was right. */
export interface JudgedRegister {
  readonly judgement: ReadingJudgement | 'first';
  readonly litresSinceLast: number | null;
  readonly lastReadAt: Date | null;
  readonly lastRegister: number | null;
  readonly likelyRegister: number | null;
}

const MS_PER_DAY = 86_400_000;
/** Fewer intervals than this say nothing of what a meter passes: common practice. */
const LEAST_HISTORY = 3;
/** What a meter passes follows the seasons, so only nearly a year of it says what is too much. */
const LEAST_DAYS = 300;
/** How far a volume may be off the year's most before it is not believed: four of these above. An assumption. */
const RELATIVE_SD = 0.45;
const RIGHT = new Set<string>(['first', 'ok', 'rollover', 'stuck']);

/** How many readings before the first that is shown are enough to judge it. */
export const READINGS_TO_JUDGE_BY = 60;

/** A meter's readings in order of time, each judged by those before it; one that cannot be right does not count for the next. */
export class RegisterHistory {
  private last: RegisterAt | null = null;
  private readonly passed: { readonly days: number; readonly litres: number }[] = [];

  /**
   * @param meter how the meter counts [as the type says]
   * @param whole whether the readings to come are all that there are: then the register's beginning is the one before them [code]
   */
  constructor(
    private readonly meter: MeterScale,
    whole: boolean,
  ) {
    if (whole && meter.installedOn !== null && meter.firstRegister !== null)
      this.last = { readAt: new Date(`${meter.installedOn}T00:00:00Z`), register: meter.firstRegister };
  }

  /**
   * Judges a register that comes after all that were followed.
   *
   * @param next the register and when it was read [register units]
   * @returns what it looks like, and the volume since the last that was right [L]
   */
  judge(next: RegisterAt): JudgedRegister {
    const last = this.last && this.last.readAt < next.readAt ? this.last : null;
    const beside = { lastReadAt: last?.readAt ?? null, lastRegister: last?.register ?? null };
    if (this.meter.digits !== null && next.register >= 10 ** this.meter.digits)
      return { judgement: 'implausibly high', litresSinceLast: null, likelyRegister: null, ...beside };
    if (!last) return { judgement: 'first', litresSinceLast: null, likelyRegister: null, ...beside };
    const judged = judgeReading({
      previousRegister: last.register,
      nextRegister: next.register,
      elapsedDays: daysBetween(last, next),
      digits: this.meter.digits,
      litresPerRegisterUnit: litresFrom(this.meter.multiplier, this.meter.unit),
      expectation: this.expectation(),
    });
    return { judgement: judged.judgement, litresSinceLast: judged.litres, likelyRegister: judged.likelyRegister, ...beside };
  }

  /**
   * Judges the next register and, where it can be right, goes on from it.
   *
   * @param next the register and when it was read [register units]
   * @returns what it looks like, and the volume since the last that was right [L]
   */
  follow(next: RegisterAt): JudgedRegister {
    const judged = this.judge(next);
    if (!RIGHT.has(judged.judgement)) return judged;
    if (this.last && judged.litresSinceLast !== null)
      this.passed.push({ days: daysBetween(this.last, next), litres: judged.litresSinceLast });
    this.last = next;
    return judged;
  }

  /**
   * What the meter passes in a day: the most of any interval in about a year.
   *
   * @returns the most and how far it may be off, or null where the history is too short [L/d]
   */
  private expectation(): ReadingExpectation | null {
    const days = this.passed.reduce((sum, interval) => sum + interval.days, 0);
    if (this.passed.length < LEAST_HISTORY || days < LEAST_DAYS) return null;
    const most = Math.max(...this.passed.map((interval) => interval.litres / interval.days));
    return most > 0 ? { litresPerDay: most, sdLitresPerDay: RELATIVE_SD * most } : null;
  }
}

const daysBetween = (from: RegisterAt, until: RegisterAt): number => (until.readAt.getTime() - from.readAt.getTime()) / MS_PER_DAY;
