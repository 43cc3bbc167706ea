import { combined, standardDeviation, type UncertainLitres } from '../uncertainty/uncertain-litres.js';
import { absence } from '../volumes/absence.js';
import type { Figure } from '../volumes/figure.js';
import type { ScopedZone } from './assign-scope.js';
import type { ControllerLine, Gap, ZoneLine } from './month-account.js';
import type { NeededOfZone } from './needed/needed-of-zone.js';
import type { ProgrammedOfZone } from './programmed-of-zone.js';
import { absentGap, gapOf } from './volumes-of-scope.js';

/** A zone with its scope, need, program, and P - N with its parts (null where need or program is absent). */
export interface ComputedZone extends ScopedZone {
  readonly needed: NeededOfZone;
  readonly programmed: ProgrammedOfZone;
  readonly settingsGap: UncertainLitres | null;
}

/**
 * A zone's P - N with its parts.
 *
 * @param needed - The zone's need. [L]
 * @param programmed - The zone's program. [L]
 * @returns The difference, or null where need or program is absent. [L]
 */
export function settingsGapOfZone(needed: Figure, programmed: Figure): UncertainLitres | null {
  return programmed.value && needed.value
    ? combined([
        [1, programmed.value],
        [-1, needed.value],
      ])
    : null;
}

/**
 * The line of one zone.
 *
 * @param computed - The zone with need and program. [L]
 * @returns The line; litres are null with the reason of the first volume that is absent. [L]
 */
export function zoneLine(computed: ComputedZone): ZoneLine {
  const { zone, scope, meterId, needed, programmed, settingsGap: gap } = computed;
  const [need, program] = [litresOf(needed.figure), litresOf(programmed.figure)];
  const filled = needed.figure.filledLitres + programmed.figure.filledLitres;
  return {
    zoneId: zone.id,
    scope,
    meterId,
    controllerId: zone.controllerId,
    station: zone.station,
    programs: programmed.programs,
    neededLitres: need.litres,
    neededSdLitres: need.sdLitres,
    programmedLitres: program.litres,
    programmedSdLitres: program.sdLitres,
    overLitres: gap && Math.max(0, gap.litres),
    underLitres: gap && Math.max(0, -gap.litres),
    gapSdLitres: gap && standardDeviation(gap),
    runs: programmed.runs,
    minutes: programmed.minutes,
    estimatedShare: filled > 0 ? filled / ((need.litres ?? 0) + (program.litres ?? 0)) : 0,
    estimate: programmed.figure.estimate,
    reason: needed.figure.reason ?? programmed.figure.reason,
  };
}

/**
 * The line of one controller: its zones' over and under, each summed with the inputs that they share.
 *
 * @param controllerId - The controller. [code]
 * @param computed - All zones of the property. [L]
 * @returns Over and under apart, absent where no zone of the controller has both need and program. [L]
 */
export function controllerLine(controllerId: string, computed: readonly ComputedZone[]): ControllerLine {
  const own = computed.filter(({ zone }) => zone.controllerId === controllerId);
  const gaps = own.flatMap((each) => {
    const gap = each.settingsGap;
    return gap ? [{ zoneId: each.zone.id, gap }] : [];
  });
  const over = gaps.filter(({ gap }) => gap.litres > 0);
  const under = gaps.filter(({ gap }) => gap.litres < 0);
  const summed = (sign: number, side: typeof gaps): Gap =>
    gaps.length === 0
      ? absentGap(absence('volume-absent', { volumes: ['programmed'], zones: own.map(({ zone }) => zone.id) }))
      : gapOf(combined(side.map(({ gap }) => [sign, gap])));
  return {
    controllerId,
    meterIds: [...new Set(own.flatMap(({ meterId }) => (meterId === null ? [] : [meterId])))],
    over: summed(1, over),
    under: summed(-1, under),
    overZoneIds: over.map(({ zoneId }) => zoneId),
    underZoneIds: under.map(({ zoneId }) => zoneId),
  };
}

function litresOf({ value }: Figure): { readonly litres: number | null; readonly sdLitres: number | null } {
  return value ? { litres: value.litres, sdLitres: standardDeviation(value) } : { litres: null, sdLitres: null };
}
