import { rankedInputs } from '../uncertainty/input-share.js';
import { combined, standardDeviation, type UncertainLitres } from '../uncertainty/uncertain-litres.js';
import { type Absence, absence } from '../volumes/absence.js';
import type { Figure } from '../volumes/figure.js';
import type { Gap, SettingsGap, Volume, Volumes } from './month-account.js';

/**
 * The four figures of a property or meter. `blocked` is why M - P and M - N are absent although the volumes are known, `blockedAllowed` the
 * same for M - A; `zoneGaps` are each zone's P - N where both are known.
 */
export interface FourFigures {
  readonly allowed: Figure;
  readonly needed: Figure;
  readonly programmed: Figure;
  readonly metered: Figure;
  readonly blocked: Absence | null;
  readonly blockedAllowed: Absence | null;
  readonly zoneGaps: readonly UncertainLitres[];
}

type FigureName = 'allowed' | 'needed' | 'programmed' | 'metered';

/**
 * The four volumes and the gaps between them.
 *
 * M − A = (M − P) + (P − N) + (N − A); each gap's uncertainty comes from the inputs, one that two volumes share counted once.
 *
 * @param figures - The four figures and what blocks gaps with the metered one. [L]
 * @returns Volumes and gaps, absent ones with their reason. [L]
 */
export function volumesOfScope(figures: FourFigures): Volumes {
  const programmedGap = gapBetween(figures, 'programmed', 'needed', null);
  return {
    allowed: volumeOf(figures.allowed),
    needed: volumeOf(figures.needed),
    programmed: volumeOf(figures.programmed),
    metered: volumeOf(figures.metered),
    landscapeGap: gapBetween(figures, 'needed', 'allowed', null),
    settingsGap: settingsGap(programmedGap, figures.zoneGaps),
    unexplainedGap: gapBetween(figures, 'metered', 'programmed', figures.blocked),
    meteredOverNeeded: gapBetween(figures, 'metered', 'needed', figures.blocked),
    meteredOverAllowed: gapBetween(figures, 'metered', 'allowed', figures.blockedAllowed),
  };
}

/**
 * A gap from an uncertain difference.
 *
 * @param difference - The difference with its parts. [L]
 * @param estimate - Why one of its volumes is an estimate; null where none is. [code]
 * @returns The gap with its standard deviation and ranked inputs. [L]
 */
export function gapOf(difference: UncertainLitres, estimate: Absence | null = null): Gap {
  return { litres: difference.litres, sdLitres: standardDeviation(difference), reason: null, estimate, inputs: rankedInputs(difference) };
}

/**
 * A gap that is absent.
 *
 * @param reason - Why. [code]
 * @returns The gap without a value. [code]
 */
export function absentGap(reason: Absence): Gap {
  return { litres: null, sdLitres: null, reason, estimate: null, inputs: [] };
}

function volumeOf({ value, filledLitres, reason }: Figure): Volume {
  if (!value) return { litres: null, sdLitres: null, estimatedShare: 0, reason };
  const estimatedShare = filledLitres === 0 ? 0 : Math.min(1, Math.abs(filledLitres / value.litres));
  return { litres: value.litres, sdLitres: standardDeviation(value), estimatedShare, reason: null };
}

function gapBetween(figures: FourFigures, more: FigureName, less: FigureName, blocked: Absence | null): Gap {
  const [first, second] = [figures[more].value, figures[less].value];
  if (blocked) return absentGap(blocked);
  if (first && second)
    return gapOf(
      combined([
        [1, first],
        [-1, second],
      ]),
      figures[more].estimate ?? figures[less].estimate,
    );
  const volumes = [more, less].filter((name) => figures[name].value === null);
  const reasons = volumes.map((name) => figures[name].reason?.code ?? '');
  return absentGap(absence('volume-absent', { volumes, reasons }));
}

function settingsGap(gap: Gap, zoneGaps: readonly UncertainLitres[]): SettingsGap {
  if (gap.litres === null) return { ...gap, overLitres: null, underLitres: null };
  const over = zoneGaps.reduce((sum, { litres }) => sum + Math.max(0, litres), 0);
  const under = zoneGaps.reduce((sum, { litres }) => sum + Math.max(0, -litres), 0);
  return { ...gap, overLitres: over, underLitres: under };
}
