import type { Formats, VolumeColumn } from '../formats/formats.js';
import type { GapKind, GaugeWords, Mark } from '../gauge/drawing/model.js';
import { gauge as english } from './en/gauge.js';
import { gauge as spanish } from './es/gauge.js';
import { fill } from './fill.js';

const MARK_NAMES: readonly Mark[] = ['allowed', 'needed', 'programmed', 'metered'];
const GAP_NAMES: readonly GapKind[] = ['landscape', 'settings', 'unexplained'];

/** The gauge's words in the report's language, for volumes in one unit. */
export function gaugeWordsOf(formats: Formats, column: VolumeColumn): GaugeWords {
  const words: Readonly<Record<string, string>> = formats.language === 'es' ? spanish : english;
  const say = (id: string, values: Readonly<Record<string, string>> = {}): string => fill(words[`gauge.${id}`] ?? id, values);
  const sides = (kind: string, above = 'above', below = 'below') => ({ above: say(`${kind}.${above}`), below: say(`${kind}.${below}`) });
  const each = <Name extends string, Said>(names: readonly Name[], said: (name: Name) => Said): Record<Name, Said> =>
    Object.fromEntries(names.map((name) => [name, said(name)])) as Record<Name, Said>;
  return {
    unit: column.unit,
    thousandUnit: column.thousandUnit,
    marks: each(MARK_NAMES, (mark) => say(mark)),
    gaps: each(GAP_NAMES, (gap) => say(gap)),
    compare: each([...GAP_NAMES, 'aboveAllowed', 'aboveNeed'] as const, (gap) => sides(gap)),
    remedy: each(GAP_NAMES, (gap) => sides(gap, 'doAbove', 'doBelow')),
    missing: say('missing'),
    estimated: say('estimated'),
    within: (spread) => (spread ? say('withinSpread', { spread }) : say('within')),
    waitsFor: (gap, mark) => say('waitsFor', { gap, mark }),
    notKnown: (gap) => say('notKnown', { gap }),
    about: (money) => say('about', { money }),
    number: (value, decimals) => formats.figure(value, decimals),
    money: (value) => formats.money(value),
  };
}
