import { excessFamily } from '../../cause.js';
import type { Episode } from '../../evidence/episode.js';
import { worthALook } from '../../thresholds.js';
import type { IntervalVolumes } from '../interval-volumes.js';
import { aboutMeter, type JudgedMeter, monthOf } from '../monthly-episode.js';
import { type BeyondHabit, NeedHabit } from './need-habit.js';

/**
 * How far the need of a meter's zones may be off altogether: plant factor 0.25, uniformity 0.15, area 0.05 and ET 0.05 as defaults, together
 * 0.30. It is systematic: more readings do not make it less.
 */
const NEED_RELATIVE_SD = 0.3;

/** What rain at the property and not at its station may do, in shares of the usual need: as rain's own default. */
const RAIN_SHARE = 0.15;

/** A chance of a hundredth for a property, once, since the need's error is the same in all its months. */
const OPENS_BEYOND = 2.33;
const CLEARS_BELOW = 1;

/** Beyond the habit by so many of its standard deviations something was added, and within one of them it is gone. */
const BEYOND_HABIT = 2.5;
const WITHIN_HABIT = 1;
/** What is open opens anew when it is beyond its own habit and has grown to this many times itself: as unexplained use does. An assumption. */
const GROWN_TO = 1.5;
/** Out of season a ratio to nearly nothing says nothing: the need must be this share of the usual. */
const IN_SEASON = 0.4;
const NOT_BEYOND: BeyondHabit = { score: Number.NEGATIVE_INFINITY, sd: Number.POSITIVE_INFINITY };

/** What an interval has beyond its need, and how far that may be off. [L] */
interface Excess {
  readonly volumes: IntervalVolumes;
  readonly needed: number;
  readonly sd: number;
  /** Logarithm of metered over needed; null out of season. [–] */
  readonly ratio: number | null;
}

/** Watches metered water against need, for as long as what is programmed is not known. */
export class NeedWatch {
  private readonly ended: Episode[] = [];
  private open: Episode | null = null;
  private neededLitres = 0;
  private neededDays = 0;
  private readonly habit = new NeedHabit();
  private whileOpen = new NeedHabit();

  constructor(private readonly judged: JudgedMeter) {}

  /**
   * What has been found so far.
   *
   * @returns The episodes. [code]
   */
  episodes(): readonly Episode[] {
    return this.open ? [...this.ended, this.open] : this.ended;
  }

  /**
   * Judges an interval: one with known programmed water ends what is open, since another judge takes over.
   *
   * @param volumes - The interval. [L]
   * @param othersOpen - Whether the same cause is open already. [–]
   */
  see(volumes: IntervalVolumes, othersOpen: boolean): void {
    if (volumes.needed !== null) {
      this.neededLitres += volumes.needed;
      this.neededDays += volumes.days;
    }
    if (volumes.programmed !== null || othersOpen) this.end(volumes);
    else if (volumes.needed !== null) this.judge(volumes, volumes.needed);
  }

  private judge(volumes: IntervalVolumes, needed: number): void {
    const usual = (this.neededLitres / this.neededDays) * volumes.days;
    const sd = Math.sqrt((NEED_RELATIVE_SD * needed) ** 2 + (RAIN_SHARE * usual) ** 2 + volumes.ownVariance);
    const isInSeason = needed >= IN_SEASON * usual && volumes.metered > 0;
    const ratio = Math.log(volumes.metered / needed);
    const beyond = isInSeason && volumes.metered > needed ? this.habit.beyond(ratio) : NOT_BEYOND;
    this.follow({ volumes, needed, sd, ratio: isInSeason ? ratio : null }, beyond);
    if (isInSeason) (this.open ? this.whileOpen : this.habit).learn(ratio);
  }

  private follow({ volumes, needed, sd, ratio }: Excess, beyond: BeyondHabit): void {
    const excess = volumes.metered - needed;
    const isAdded = beyond.score > BEYOND_HABIT;
    const told = { volumes, needed, ratio, sd: isAdded ? Math.min(sd, beyond.sd * needed) : sd };
    if (excess < CLEARS_BELOW * sd && beyond.score <= WITHIN_HABIT) this.end(volumes);
    else if (this.open) this.open = this.grownAnew(told, this.open) ?? this.told(told, this.open) ?? this.open;
    else if (isAdded || excess > OPENS_BEYOND * sd) this.begin(this.told(told, null));
  }

  private begin(episode: Episode | null): void {
    this.open = episode;
    this.whileOpen = new NeedHabit();
  }

  // A further cause beside what is open: the former ends with the interval that shows it.
  private grownAnew(more: Excess, open: Episode): Episode | null {
    const { score } = more.ratio === null ? NOT_BEYOND : this.whileOpen.beyond(more.ratio);
    const anew = score > BEYOND_HABIT ? this.told(more, null) : null;
    if (!anew || (anew.litres ?? 0) < GROWN_TO * (open.litres ?? 0)) return null;
    this.end(more.volumes);
    this.whileOpen = new NeedHabit();
    return { ...anew, says: { ...anew.says, details: { ...anew.says.details, outgrownLitresPerMonth: open.litres } } };
  }

  private told({ volumes, needed, sd }: Excess, before: Episode | null): Episode | null {
    const { meterId, price, thresholds } = this.judged;
    const litres = monthOf((volumes.metered - needed) / volumes.days);
    const worthy = worthALook({ litres, sdLitres: monthOf(sd / volumes.days), pricePerLitre: price }, thresholds);
    if (!worthy) return null;
    const family = excessFamily(meterId);
    const outgrown = before?.says.details['outgrownLitresPerMonth'];
    const about = aboutMeter(this.judged, volumes.fromLocalDay, volumes.toLocalDay);
    return {
      ...about,
      ...worthy,
      fromDate: before?.fromDate ?? about.fromDate,
      kind: 'overwatered',
      causeKey: family,
      causeFamily: family,
      evidence: { meteredLitres: volumes.metered, neededLitres: needed, sdLitres: sd, days: volumes.days },
      says: {
        code: 'overwatered',
        details: {
          ...{ meterId, because: 'settings-not-known', neededLitres: needed, meteredLitres: volumes.metered, litresPerMonth: litres },
          ...(outgrown !== undefined && { outgrownLitresPerMonth: outgrown }),
        },
      },
      openedLocalDay: before?.openedLocalDay ?? volumes.toLocalDay,
      clearedLocalDay: null,
    };
  }

  private end(volumes: IntervalVolumes): void {
    if (this.open) this.ended.push({ ...this.open, clearedLocalDay: volumes.toLocalDay });
    this.open = null;
  }
}
