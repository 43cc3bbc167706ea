import type { VolumeFigures, Writer } from '../figures.js';
import type { ReportWord } from '../../words/en/report.js';
import type { PeriodSums } from '../period-sums.js';
import type { GivenGap } from '../report-input.js';
import { isAlike } from '../is-alike.js';
import { isWithin, unseenLitres } from './drawings.js';

/** Above this share of what was metered, what could not be seen is worth a word. [–] */
const WIDE_SHARE = 0.05;

/** What a reason is told of. */
export interface Explained {
  readonly sums: PeriodSums;
  readonly volumes: VolumeFigures;
  readonly confidence: number;
  /** whether the flows on record wait for a test */
  readonly isUntested: boolean;
}

/** Whether the meter passed more than the programs explain, beyond what can be measured. */
export const isUnexplained = ({ unexplainedGap }: PeriodSums, confidence: number): boolean =>
  (unexplainedGap.litres ?? 0) > 0 && !isWithin(unexplainedGap, confidence);

/**
 * Why a property took what it took, in a few sentences: what the controllers were set to, whether water ran that no program explains, and what
 * the plants themselves need beyond what is allowed. A gap that lies within what can be measured is said to be none, with the size of what
 * could not be seen where that is large. Where the flows on record do not fit the meter, no leak is named: the flows are tested first.
 */
export function whyOf({ words }: Writer, { sums, volumes: { said, between }, confidence, isUntested }: Explained): string {
  const { metered, needed, programmed, allowed, settingsGap, unexplainedGap, landscapeGap } = sums;
  if (metered.litres === null || needed.litres === null) return '';
  if (programmed.litres === null) return words.say('why.notKnown', { reason: words.because(programmed.reason) });
  const told = (gap: GivenGap, { high, low, kind }: Told): string[] => {
    const litres = between(gap.litres, high, low);
    if (litres === null) return [];
    const side = sideOf(gap, litres, confidence);
    if (kind === 'landscape') return side === 'above' ? [words.say('why.landscape.above', { gap: said(litres) })] : [];
    const unseen = unseenLitres(gap, confidence) ?? 0;
    const word = kind === 'unexplained' ? unexplainedWord(side, { isUntested, isWide: unseen > WIDE_SHARE * (high ?? 0) }) : null;
    return [words.say(word ?? settingsWord(side, litres, needed.litres ?? 0), { gap: said(litres), unseen: said(unseen) })];
  };
  return [
    ...told(settingsGap, { high: programmed.litres, low: needed.litres, kind: 'settings' }),
    ...told(unexplainedGap, { high: metered.litres, low: programmed.litres, kind: 'unexplained' }),
    ...told(landscapeGap, { high: needed.litres, low: allowed.litres, kind: 'landscape' }),
  ].join(' ');
}

const sideOf = (gap: GivenGap, litres: number, confidence: number): Side =>
  isWithin(gap, confidence) || litres === 0 ? 'within' : litres > 0 ? 'above' : 'below';

type Side = 'above' | 'below' | 'within';

interface Told {
  readonly high: number | null;
  readonly low: number | null;
  readonly kind: 'settings' | 'unexplained' | 'landscape';
}

/** How the programs stand to the need: a gap that may be none, and is not small, is named with its size. */
function settingsWord(side: Side, gap: number, needed: number): ReportWord {
  if (side !== 'within' || isAlike(gap, needed)) return `why.settings.${side}`;
  return gap > 0 ? 'why.settings.unsureAbove' : 'why.settings.unsureBelow';
}

/** How the meter stands to the programs: above, below, or too near to tell. */
function unexplainedWord(side: Side, { isUntested, isWide }: { readonly isUntested: boolean; readonly isWide: boolean }): ReportWord {
  if (side === 'within') return isWide ? 'why.unexplained.wide' : 'why.unexplained.within';
  return isUntested ? `why.untested.${side}` : `why.unexplained.${side}`;
}
