import type { VolumeFigures, Writer } from '../figures.js';
import type { PeriodSums } from '../period-sums.js';
import { isWithin } from './drawings.js';

/**
 * Why a property took what it took, in a few sentences: what the controllers were set to, whether water ran that no program explains, and what
 * the plants themselves need beyond what is allowed. A gap that lies within what can be measured is said to be none.
 */
export function whyOf({ words }: Writer, sums: PeriodSums, { said, between }: VolumeFigures, confidence: number): string {
  const { metered, needed, programmed, allowed, settingsGap, unexplainedGap, landscapeGap } = sums;
  if (metered.litres === null || needed.litres === null) return '';
  if (programmed.litres === null) return words.say('why.notKnown', { reason: words.because(programmed.reason) });
  const told = (
    gap: PeriodSums['settingsGap'],
    high: number | null,
    low: number | null,
    kind: 'settings' | 'unexplained' | 'landscape',
  ) => {
    const litres = between(gap.litres, high, low);
    if (litres === null) return [];
    const side = isWithin(gap, confidence) || litres === 0 ? 'within' : litres > 0 ? 'above' : 'below';
    const word = `why.${kind}.${side}` as const;
    return word === 'why.landscape.within' || word === 'why.landscape.below' ? [] : [words.say(word, { gap: said(litres) })];
  };
  return [
    ...told(settingsGap, programmed.litres, needed.litres, 'settings'),
    ...told(unexplainedGap, metered.litres, programmed.litres, 'unexplained'),
    ...told(landscapeGap, needed.litres, allowed.litres, 'landscape'),
  ].join(' ');
}
