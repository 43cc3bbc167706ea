import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { excessFamily } from '../cause.js';
import type { Episode } from '../evidence/episode.js';
import { worthALook } from '../thresholds.js';
import { changeOf, type RatioChange, type TaughtInterval } from './change/change-of-ratio.js';
import { type Grown, grownAnew, sinceOpened, stillGrown } from './change/grown-anew.js';
import { flowTestOf, isNearOne } from './flow-test.js';
import type { IntervalVolumes } from './interval-volumes.js';
import { ratioOf } from './habit/usual-ratio.js';
import { loosened, type MeterHabit } from './habit/meter-habit.js';
import { innovationOf, noiseSd, taughtBy } from './habit/teach-habit.js';
import { aboutMeter, type JudgedMeter, monthOf } from './monthly-episode.js';
import { FEWEST_READINGS, MOST_TOGETHER, monthlyLimits } from './monthly-limits.js';

/** After a change that is no finding the ratio is learnt anew within this: as far as flows on record are commonly off. */
const RELEARN_SD = 0.1;

/** A ratio is steady when months scatter about it by no more than this. */
const STEADY_SD = 0.1;

/** A ratio that became less is remembered for a year and a month: then what was closed was meant to be. Common practice. [d] */
const REMEMBERED_DAYS = 395;

/** A ratio of an interval that was programmed less than this share of the most says little. Common practice. */
const OF_MOST = 0.25;

interface Former {
  readonly habit: MeterHabit;
  readonly untilLocalDay: number;
}

interface Followed {
  readonly change: RatioChange;
  readonly openedLocalDay: number;
  readonly confidence: number;
  /** Water of a day while the finding was open that this one outgrew; null where it is the first. [L/d] */
  readonly outgrown: number | null;
  readonly intervals: IntervalVolumes[];
  readonly since: IntervalVolumes[];
  perDay: number;
  sdPerDay: number;
  returned: number;
  grown: Grown;
}

/** Watches metered against programmed water of one meter, reading by reading. */
export class RatioWatch {
  private readonly ended: Episode[] = [];
  private habit: MeterHabit;
  private taught: readonly TaughtInterval[] = [];
  private former: Former | null = null;
  private growth = 0;
  private grownFrom: { readonly habit: MeterHabit; readonly localDay: number };
  private followed: Followed | null = null;
  private flowTest: Episode | null = null;
  private fromStart = true;
  private firstDate: string | null = null;

  constructor(
    private readonly judged: JudgedMeter,
    private readonly onRecord: MeterHabit,
  ) {
    this.habit = onRecord;
    this.grownFrom = { habit: onRecord, localDay: 0 };
  }

  /**
   * Whether a change of the ratio is open.
   *
   * @returns True while it is. [–]
   */
  get isOpen(): boolean {
    return this.followed !== null;
  }

  /**
   * What has been found so far; open episodes are as last seen.
   *
   * @returns The episodes. [code]
   */
  episodes(): readonly Episode[] {
    const open = this.followed ? [this.told(this.followed, null)] : [];
    return [...this.ended, ...open, ...(this.flowTest ? [this.flowTest] : [])];
  }

  /**
   * Judges the next interval.
   *
   * @param volumes - The interval; its programmed water is known. [L]
   */
  see(volumes: IntervalVolumes): void {
    this.firstDate ??= dateOfDayNumber(volumes.fromLocalDay);
    if (this.followed) {
      this.follow(this.followed, volumes);
      return;
    }
    this.sumGrowth(volumes);
    const { habit, taught, growth, grownFrom } = this;
    const change = changeOf({ habit, taught, growth, grownFrom, volumes });
    if (change?.kind === 'relearn') this.relearn(volumes);
    else if (change?.sign === 1 && this.isBack(volumes)) this.goBack(volumes);
    else if (change === null || !this.open(change, volumes)) this.teach(volumes);
  }

  // What passes now as it did before it passed less is no leak: something was closed, and was opened again.
  private isBack(volumes: IntervalVolumes): boolean {
    if (!this.former || volumes.toLocalDay > this.former.untilLocalDay) return false;
    return innovationOf(this.former.habit, volumes).score < monthlyLimits.endScore;
  }

  private goBack(volumes: IntervalVolumes): void {
    if (this.former) this.habit = this.former.habit;
    this.former = null;
    this.forget();
    this.teach(volumes);
  }

  private forget(): void {
    this.growth = 0;
    this.taught = [];
  }

  private sumGrowth(volumes: IntervalVolumes): void {
    if (this.habit.taught < FEWEST_READINGS) return;
    if (this.growth === 0) this.grownFrom = { habit: this.habit, localDay: volumes.fromLocalDay };
    this.growth = Math.max(0, this.growth + innovationOf(this.habit, volumes).score - monthlyLimits.slack);
  }

  private teach(volumes: IntervalVolumes): void {
    this.taught = [...this.taught, { habit: this.habit, volumes }].slice(-MOST_TOGETHER);
    this.habit = taughtBy(this.habit, volumes);
    this.testFlow(volumes);
  }

  // Opened once, from the first reading on; told with what has been learnt since; ended when the ratio is near 1.
  private testFlow(volumes: IntervalVolumes): void {
    const test = flowTestOf(this.judged, this.habit, volumes);
    const openedLocalDay = this.flowTest?.openedLocalDay ?? volumes.toLocalDay;
    if (this.flowTest && isNearOne(this.habit, volumes)) {
      this.ended.push({ ...this.flowTest, clearedLocalDay: volumes.toLocalDay });
      this.flowTest = null;
    } else if (test && (this.flowTest || this.fromStart)) {
      this.flowTest = { ...test, fromDate: this.firstDate ?? test.fromDate, openedLocalDay };
    }
  }

  private relearn(volumes: IntervalVolumes): void {
    const last = this.taught.at(-1);
    const before = last?.habit ?? this.habit;
    this.former = { habit: before, untilLocalDay: volumes.toLocalDay + REMEMBERED_DAYS };
    const open = loosened(before, RELEARN_SD);
    this.habit = last ? taughtBy(open, last.volumes) : open;
    this.forget();
    this.fromStart = false;
    this.teach(volumes);
  }

  private open(change: RatioChange, volumes: IntervalVolumes, outgrown: number | null = null): boolean {
    const { price, thresholds } = this.judged;
    const { suspect, sign } = change;
    const { excess, sd } = innovationOf(change.habit, suspect);
    const month = { litres: monthOf((sign * excess) / suspect.days), sdLitres: monthOf(sd / suspect.days) };
    const worthy = worthALook({ ...month, pricePerLitre: sign > 0 ? price : null }, thresholds);
    if (!worthy) return false;
    this.followed = {
      change,
      openedLocalDay: volumes.toLocalDay,
      confidence: worthy.confidence,
      outgrown,
      intervals: [volumes],
      since: [volumes],
      perDay: (sign * excess) / suspect.days,
      sdPerDay: sd / suspect.days,
      returned: 0,
      grown: sinceOpened(change),
    };
    return true;
  }

  // The odds that the change has ended are gathered from readings near the habit; a reading far from it takes them back.
  private follow(followed: Followed, volumes: IntervalVolumes): void {
    const { change } = followed;
    const more = change.sign > 0 && !change.beforeHabit ? grownAnew(followed.grown, volumes) : null;
    if (more && this.open(more, volumes, followed.perDay)) {
      this.ended.push(this.told(followed, volumes.toLocalDay));
      return;
    }
    followed.since.push(volumes);
    const { excess, expected, sd, score } = innovationOf(change.habit, volumes);
    const still = change.sign > 0 ? followed.perDay * volumes.days : change.lackShare * expected;
    if (change.sign * score >= monthlyLimits.endScore || sd === 0) {
      followed.returned = 0;
      followed.perDay = (change.sign * excess) / volumes.days;
      followed.sdPerDay = sd / volumes.days;
      followed.intervals.push(volumes);
      followed.grown = stillGrown(followed.grown, volumes);
    } else {
      followed.returned = Math.max(0, followed.returned + (still ** 2 - 2 * still * change.sign * excess) / (2 * sd ** 2));
    }
    if (followed.returned > monthlyLimits.endOdds) this.end(followed, volumes);
    else if (change.beforeHabit) this.settle(followed, volumes);
  }

  private end(followed: Followed, volumes: IntervalVolumes): void {
    this.ended.push(this.told(followed, volumes.toLocalDay));
    this.followed = null;
    this.habit = followed.change.habit;
    this.forget();
    this.teach(volumes);
  }

  // What was off before there was a habit and stays so in proportion is the flows on record, not a leak.
  private settle(followed: Followed, volumes: IntervalVolumes): void {
    const most = followed.since.reduce((so, { programmed }) => Math.max(so, programmed ?? 0), 0);
    const ratios = followed.since.flatMap(({ metered, programmed }) =>
      programmed !== null && programmed > OF_MOST * most && metered > 0 ? [Math.log(metered / programmed)] : [],
    );
    if (ratios.length < FEWEST_READINGS) return;
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    const variance = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / (ratios.length - 1);
    if (variance > STEADY_SD ** 2) return;
    this.ended.push(this.told(followed, volumes.toLocalDay));
    this.followed = null;
    this.forget();
    this.habit = followed.since.reduce(taughtBy, this.onRecord);
    this.testFlow(volumes);
  }

  private told(followed: Followed, clearedLocalDay: number | null): Episode {
    const { change, openedLocalDay, confidence, perDay, sdPerDay, intervals } = followed;
    const last = intervals.at(-1) ?? change.suspect;
    const { expected } = innovationOf(change.habit, last);
    const family = excessFamily(this.judged.meterId);
    const ratios = this.ratiosOf(change, last);
    const grown = followed.outgrown === null ? {} : { outgrownLitresPerMonth: monthOf(followed.outgrown) };
    return {
      ...aboutMeter(this.judged, change.fromLocalDay, last.toLocalDay),
      kind: change.kind === 'not delivering' ? 'not delivering' : 'unexplained use',
      causeKey: family,
      causeFamily: family,
      litres: monthOf(perDay),
      sdLitres: monthOf(sdPerDay),
      money: change.sign > 0 && this.judged.price !== null ? monthOf(perDay) * this.judged.price : null,
      confidence,
      evidence: {
        signal: change.signal,
        score: change.score,
        noise: noiseSd(change.habit),
        expectedLitres: expected,
        meteredLitres: last.metered,
        suspect: this.judged.isIndexed ? { ...change.suspect, programmed: null } : change.suspect,
        ratio: ratios.ratio,
        usualRatio: ratios.usualRatio,
      },
      says: {
        code: change.kind,
        details: { meterId: this.judged.meterId, ...ratios, meteredLitres: last.metered, litresPerMonth: monthOf(perDay), ...grown },
      },
      openedLocalDay,
      clearedLocalDay,
    };
  }

  // An index has no ratio to be told; what does not deliver is then told as a share of what usually passes.
  private ratiosOf(change: RatioChange, last: IntervalVolumes) {
    if (this.judged.isIndexed) {
      const share = last.metered / innovationOf(change.habit, last).expected;
      return { ratio: change.sign > 0 ? null : share, usualRatio: null, programmedLitres: null };
    }
    const programmed = last.programmed ?? 0;
    return {
      ratio: programmed > 0 ? last.metered / programmed : null,
      usualRatio: change.beforeHabit ? null : ratioOf(change.habit, last),
      programmedLitres: programmed,
    };
  }
}
