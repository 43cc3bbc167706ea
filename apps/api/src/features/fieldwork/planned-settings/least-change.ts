import { type PercentLimits, percentAdjust } from '@rillbook/irrigation/planning/percent-adjust.js';
import type { ZoneLine } from '@rillbook/metering/account/month-account.js';

/** What of a program a percent adjust changes; null is as set, 100 %. */
interface AdjustableProgram {
  readonly name: string;
  readonly adjustPercent: number | null;
}

/** How a controller adjusts: all its programs by one percent, or each by its own. */
export interface Adjusting extends PercentLimits {
  readonly scope: 'controller' | 'program';
}

type Line = Pick<ZoneLine, 'zoneId' | 'scope' | 'programs' | 'neededLitres' | 'programmedLitres'>;

const AS_SET_PERCENT = 100;
const percentOf = (program: AdjustableProgram): number => program.adjustPercent ?? AS_SET_PERCENT;

/**
 * The programs with the fewest key presses that bring them nearest to what was needed: only percents change.
 *
 * @param programs what the controller was set to throughout the account's days
 * @param lines the account's lines of the controller's zones
 * @returns null where no percent would change, or none can be known: a zone without need or program on record leaves its programs as they are
 */
export function leastChange<P extends AdjustableProgram>(programs: readonly P[], lines: readonly Line[], adjusting: Adjusting): P[] | null {
  const watered = lines.filter((line) => line.scope !== 'hand');
  const wished = new Map<string, number>();
  for (const group of groupsOf(programs, watered, adjusting.scope)) {
    const percent = percentFor(group, watered, adjusting);
    if (percent !== null) for (const { name } of group) wished.set(name, percent);
  }
  const changed = programs.map((program) => ({ ...program, adjustPercent: wished.get(program.name) ?? program.adjustPercent }));
  return changed.some((program, at) => percentOf(program) !== percentOf(programs[at]!)) ? changed : null;
}

/** Programs that must be judged together: all of a controller with one percent, else those that share a zone. */
function groupsOf<P extends AdjustableProgram>(programs: readonly P[], lines: readonly Line[], scope: Adjusting['scope']): P[][] {
  if (scope === 'controller') return [[...programs]];
  let groups = programs.map((program) => [program]);
  for (const line of lines) {
    const sharing = groups.filter((group) => group.some(({ name }) => line.programs.includes(name)));
    if (sharing.length > 1) groups = [...groups.filter((group) => !sharing.includes(group)), sharing.flat()];
  }
  return groups;
}

function percentFor(group: readonly AdjustableProgram[], lines: readonly Line[], limits: PercentLimits): number | null {
  const [percentNow, ...others] = new Set(group.map(percentOf));
  if (percentNow === undefined || percentNow <= 0 || others.length) return null;
  const zones = lines
    .filter((line) => line.programs.some((name) => group.some((program) => program.name === name)))
    .map(({ zoneId, neededLitres, programmedLitres }) => ({ zoneId, neededLitres, programmedLitres }));
  const known = zones.filter(
    (zone): zone is { zoneId: string; neededLitres: number; programmedLitres: number } =>
      zone.neededLitres !== null && zone.programmedLitres !== null,
  );
  if (!known.length || known.length < zones.length) return null;
  return percentAdjust(known, percentNow, limits)?.percent ?? null;
}
