import { describe, expect, it } from 'vitest';
import type { ToldFinding } from '../../../apps/web/src/features/findings/headline/told-finding.js';
import { toldSentence } from '../../../apps/web/src/features/findings/headline/told-sentence.js';
import { findingValues } from '../../../apps/web/src/says/finding-sentence.js';
import { namesOf } from '../../../apps/web/src/says/names.js';
import { gallons } from '../support/built.js';
import { sayingOf } from '../says/saying-of.js';

const steady: ToldFinding = {
  kind: 'steady flow',
  state: 'open',
  fromOn: '2026-09-06',
  untilOn: '2026-09-23',
  clearedAt: null,
  litres: gallons(92_040),
  money: 818.2,
  confidence: 1,
  says: { code: 'steady flow', details: { litresPerMinute: gallons(2.1), litresSoFar: gallons(53_500) } },
};
const over: ToldFinding = {
  ...steady,
  kind: 'over-programmed',
  fromOn: '2026-08-01',
  confidence: 0.97,
  says: { code: 'over-programmed', details: { programs: ['A'], zoneIds: ['z1'], percentOfNow: 64 } },
};
const english = (finding: ToldFinding): string => toldSentence(sayingOf('en'), finding);

/** What stands after the seen: since when, how sure, water and money, and what to look at first. */
const ALL_FIVE = /^(.+): (.+), (.+ sure|certain, .+|seen by .+|.+ known), (.+); first, (.+)$/;

describe('a finding in one sentence', () => {
  it('says what, since when, how sure, water and money a month, and what to look at first', () => {
    expect(english(steady)).toBe(
      'About 2.1 gpm flows through the meter without a stop, also when nothing is set to run: since Sunday 6 September, 99% sure, about 92,000 gal and $818 a month; first, look for a leak, a broken pipe or a valve that does not close',
    );
    expect(toldSentence(sayingOf('es', 'metric'), steady)).toBe(
      'Por el medidor pasan sin parar unos 7.9 L/min, también cuando nada debe correr: desde el domingo 6 de septiembre, seguro al 99%, unos 348 m³ y $818 al mes; primero, busque una fuga, un tubo roto o una válvula que no cierra',
    );
  });

  it('begins with a capital letter, where it begins with a zone too', () => {
    const details = { zoneId: null, ratio: 1.4, litresPerMinute: 60, usualLitresPerMinute: 43, change: 0.4 };
    const finding = {
      ...steady,
      kind: 'zone flow changed',
      says: { code: 'zone flow changed', details: { ...details, zoneIds: ['z1', 'z2'] } },
    };
    expect(english(finding)).toMatch(/^Zone 3 \(Pool lawn\) or zone 6 \(Entry beds\) passes /);
  });

  it('says since when plants that do not fit together stand so, and on which day what happened once', () => {
    const once = { ...steady, fromOn: '2026-04-01', untilOn: '2026-04-01' };
    const says = { code: 'mixed water needs', details: { zoneId: 'z1' } };
    expect(english({ ...once, kind: 'mixed water needs', says })).toContain(': since Wednesday 1 April,');
    expect(toldSentence(sayingOf('es'), { ...once, kind: 'mixed water needs', says })).toContain(': desde el miércoles 1 de abril,');
    expect(english({ ...once, kind: 'watered in rain', says: { code: 'watered in rain', details: {} } })).toContain(
      ': on Wednesday 1 April,',
    );
  });

  it.each(Object.keys(findingValues))('has all of it for %s, with and without figures, in both languages', (code) => {
    const kind = code.startsWith('not delivering') ? 'not delivering' : code;
    for (const given of [steady, { ...steady, litres: null, money: null, confidence: null, fromOn: null }]) {
      const finding = { ...given, kind, says: { code, details: {} } };
      expect(english(finding)).toMatch(ALL_FIVE);
      expect(toldSentence(sayingOf('es'), finding)).toMatch(/^.+: .+; primero, .+$/);
      expect(english(finding)).not.toMatch(/look at the evidence below|undefined|none\b/);
    }
  });

  it('tells what a month’s account judged by its newest month, though it began before', () => {
    expect(english(over)).toContain('since Saturday 1 August, 97% sure, about 92,000 gal and $818 from 1 to 23 September 2026;');
    expect(english({ ...over, untilOn: '2026-08-31' })).toContain('about 92,000 gal and $818 in August 2026;');
    expect(english({ ...over, kind: 'under-programmed', money: null })).toContain(
      'about 92,000 gal too little from 1 to 23 September 2026;',
    );
  });

  it('makes up no money, no date and no volume', () => {
    expect(english({ ...steady, money: null })).toContain('about 92,000 gal a month, at a price that is not on record;');
    expect(english({ ...steady, litres: null, money: null })).toContain('how much water and money a month is not known;');
    expect(english({ ...steady, fromOn: null })).toContain(': since when is not known, 99% sure');
    expect(english({ ...steady, kind: 'flow to be tested', money: null })).toContain('the two differ by about 92,000 gal a month');
  });

  it('says from when to when of what has ended, and one day of what was seen once', () => {
    expect(english({ ...steady, clearedAt: '2026-09-24T07:00:00Z' })).toContain('from Sunday 6 September to Wednesday 23 September');
    const rain = { code: 'watered in rain', details: { days: 1, rainMm: 7.4, spells: 1 } };
    const once = { ...steady, kind: 'watered in rain', untilOn: '2026-09-06', says: rain };
    expect(english(once)).toContain(': on Sunday 6 September, 99% sure, about 92,000 gal and $818;');
    expect(english({ ...once, says: { ...rain, details: { ...rain.details, spells: 3 } } })).toContain(
      'up to about 92,000 gal and $818 each time',
    );
  });

  it('is certain of what is read from records, and of what a crew saw; a small part is told as small', () => {
    const rule = {
      ...steady,
      kind: 'breaks a rule',
      litres: null,
      money: null,
      says: { code: 'breaks a rule', details: { programs: ['B'] } },
    };
    expect(english(rule)).toContain('certain, as it is read from the records');
    expect(english({ ...rule, confidence: 0.5 })).toContain('50% sure');
    expect(english({ ...rule, kind: 'seen on site', says: { code: 'seen on site', details: { what: 'leak' } } })).toContain(
      'seen by the crew',
    );
  });

  it('names the controller where there are several, and says that a season went by without a change', () => {
    const names = namesOf({
      controllers: [
        { id: 'c1', name: 'Clubhouse' },
        { id: 'c2', name: 'Gate' },
      ],
    });
    const details = { ...(over.says.details as object), controllerId: 'c1', unchangedDays: 82, needChangePercent: -41 };
    expect(toldSentence(sayingOf('en', 'us', names), { ...over, says: { code: 'over-programmed', details } })).toMatch(
      /^On controller Clubhouse, program A gives one zone more than the plants need, unchanged for 82 days while the need fell by 41%: since/,
    );
  });

  it('tells the kind of what a later version says', () => {
    expect(english({ ...steady, says: { code: 'from-a-later-version', details: {} } })).toMatch(/^Steady flow|^steady flow/);
  });
});
