import { describe, expect, it } from 'vitest';
import { catalogue } from '../support/catalogues.js';
import { findingSentence, findingValues, otherFinding } from '../../../apps/web/src/says/finding-sentence.js';
import { namesOf, noNames } from '../../../apps/web/src/says/names.js';
import { gatheredNotes, noteSentence, noteValues } from '../../../apps/web/src/says/note-sentence.js';
import { reasonSentence, reasonValues } from '../../../apps/web/src/says/reason-sentence.js';
import { roundVolume } from '../../../apps/web/src/says/round-volume.js';
import { aboutVolume } from '../../../apps/web/src/says/saying.js';
import { argumentsOf } from '../support/message-arguments.js';
import { sayingOf } from './saying-of.js';

/** Details as the library gives them, all at once: each code takes what it knows. 1 gal is 3.785411784 L (exact, by definition of the US gallon). */
const L_PER_GAL = 3.785411784;
const details = {
  controllerId: 'c1',
  zoneIds: ['z1', 'z2'],
  zones: ['z1'],
  zoneId: 'z2',
  programs: ['A', 'B'],
  percentOfNow: 70,
  because: 'settings-not-known',
  neededLitres: 238_500 * L_PER_GAL,
  meteredLitres: 389_634 * L_PER_GAL,
  programmedLitres: 331_200 * L_PER_GAL,
  allowedLitres: 252_100 * L_PER_GAL,
  projectedLitres: 171_875 * L_PER_GAL,
  daysCovered: 24,
  daysInMonth: 30,
  ratio: 1.176,
  usualRatio: 1.02,
  previousRegister: 18_402.1,
  nextRegister: 1_922.9,
  likelyRegister: 19_229,
  factor: 7.48,
  meterIds: ['m1'],
  meters: ['m1'],
  controllerIds: [],
  daysSinceVisit: 61,
  from: '2026-09-01',
  until: '2026-09-15',
  source: 'bills',
  litres: 1000 * L_PER_GAL,
  betterSource: 'usage',
  betterLitres: 2000 * L_PER_GAL,
  missingShare: 0.31,
  missingDays: 4,
  days: 24,
  daysBefore: 12,
  daysWanted: 90,
  neighbourDays: 2,
  normalDays: 1,
  specialLandscapeAreaM2: 900,
  irrigatedAreaM2: 500,
  volume: 'metered',
  volumes: ['programmed'],
  share: 0.12,
  input: 'duLq',
  litresPerMinute: 5 * L_PER_GAL,
  usualLitresPerMinute: 3 * L_PER_GAL,
  runDays: 3,
  litresSoFar: 21_000 * L_PER_GAL,
  times: 3,
  litresEach: 400 * L_PER_GAL,
  clockTime: '02:15',
  rainMm: 12.7,
  rule: 'two days a week',
  litresPerYear: 40_000 * L_PER_GAL,
};

const families = [
  ['finding', findingValues, findingSentence],
  ['reason', reasonValues, reasonSentence],
  ['note', noteValues, noteSentence],
] as const;
const cases = families.flatMap(([family, values, sentence]) =>
  Object.keys(values).flatMap((code) => (['en', 'es'] as const).map((language) => ({ family, code, language, sentence }))),
);

describe('sentences', () => {
  it.each(cases)('$family $code has words in $language, with and without details', ({ code, language, sentence }) => {
    for (const given of [details, {}, null]) {
      const said = sentence(sayingOf(language), { code, details: given }) ?? '';
      expect(said).toMatch(/^.{12,}\.$/);
      expect(said).not.toMatch(/[{}]|undefined|NaN|null|none/);
    }
  });

  it('tells volumes in the organization’s units and names a zone that is alone', () => {
    const says = { code: 'over-programmed', details: { ...details, programs: ['B'], zoneIds: ['z1'] } };
    expect(findingSentence(sayingOf('en'), says)).toBe(
      'Program B gives zone 3 (Pool lawn) more than the plants need. About 70% of the present minutes would do.',
    );
    const unexplained = { code: 'unexplained use', details };
    expect(findingSentence(sayingOf('en'), unexplained)).toBe(
      '58,400 gal that no program explains: metered is 118% of programmed, and was 102% in earlier months.',
    );
    expect(findingSentence(sayingOf('en', 'metric'), unexplained)).toMatch(/^221 m³ that/);
    const byRate = { code: 'unexplained use', details: { ...details, litresPerMonth: 378_541.2 } };
    expect(findingSentence(sayingOf('en'), byRate)).toMatch(/^100,000 gal a month that no program explains/);
    expect(findingSentence(sayingOf('es'), byRate)).toMatch(/ al mes que ningún programa explica/);
    const above = { code: 'overwatered', details: { ...details, litresPerMonth: 378_541.2, outgrownLitresPerMonth: 37_854.12 } };
    expect(findingSentence(sayingOf('en'), above)).toMatch(/than the plants needed, up from 10,000 gal\. /);
    expect(findingSentence(sayingOf('es'), above)).toMatch(/que las plantas necesitaban, antes 10,000 gal\. /);
    const grown = { code: 'unexplained use', details: { ...byRate.details, outgrownLitresPerMonth: 37_854.12 } };
    expect(findingSentence(sayingOf('en'), grown)).toMatch(/^100,000 gal a month that no program explains, up from 10,000 gal: metered/);
    expect(findingSentence(sayingOf('es'), grown)).toMatch(/ que ningún programa explica, antes 10,000 gal: lo medido/);
    expect(findingSentence(sayingOf('es'), says)).toMatch(/^El programa B da a la zona 3 \(Pool lawn\) más/);
  });

  it.each(Object.keys(findingValues))('%s begins as a sentence does, named or not', (code) => {
    for (const saying of [sayingOf('en'), sayingOf('en', 'us', noNames), sayingOf('es', 'us', noNames)])
      expect(findingSentence(saying, { code, details: { ...details, zoneIds: ['z1'] } })).toMatch(/^[\p{Lu}\d–]/u);
  });

  it('counts zones where they have no names, and names the controller only where there are several', () => {
    const says = { code: 'under-programmed', details };
    expect(findingSentence(sayingOf('en', 'us', noNames), says)).toMatch(/^Programs A and B give 2 zones less/);
    const several = namesOf({
      controllers: [
        { id: 'c1', name: 'Clubhouse' },
        { id: 'c2', name: 'Gate' },
      ],
    });
    expect(findingSentence(sayingOf('en', 'us', several), says)).toMatch(/^Controller Clubhouse: programs A and B/);
  });

  it('tells a clock as the language does', () => {
    expect(findingSentence(sayingOf('en'), { code: 'off-schedule run', details })).toContain('outside every program, about 2:15 am:');
    expect(findingSentence(sayingOf('es'), { code: 'off-schedule run', details })).toContain('hacia las 2:15 am:');
  });

  it('projects a month that is under way only', () => {
    const whole = { code: 'over allowance', details: { ...details, daysCovered: 30 } };
    expect(findingSentence(sayingOf('en'), whole)).toBe('137,500 gal more metered than is allowed.');
    expect(findingSentence(sayingOf('en'), { code: 'over allowance', details })).toContain('171,900 gal by the month’s end');
  });

  it('says the band of a projection, and none where the month may keep within its allowance', () => {
    const projected = (projectedLitres: number, projectedLowerLitres: number, projectedUpperLitres: number) => ({
      code: 'over allowance',
      details: { ...details, projectedLitres, projectedLowerLitres, projectedUpperLitres },
    });
    const [over, perhaps, within] = [projected(378_541.2, 189_270.6, 567_811.8), projected(378_541.2, -1, 567_811.8), projected(-1, -2, 5)];
    expect(findingSentence(sayingOf('en'), over)).toContain(
      'by the month’s end about 100,000 gal, nine times in ten between 50,000 gal and 150,000 gal',
    );
    expect(findingSentence(sayingOf('es'), perhaps)).toContain('nueve de cada diez veces a lo más');
    expect(findingSentence(sayingOf('en'), within)).toContain('the month will probably end within it');
  });

  it('says the kind of a finding whose code it does not know', () => {
    expect(findingSentence(sayingOf('en'), { code: 'from-a-later-version', details: {} })).toBeNull();
    expect(otherFinding(sayingOf('es'), 'steady flow')).toContain('flujo constante');
  });

  it('says how far new plants have come', () => {
    const note = { code: 'plants-establishing', details: { zoneId: 'z1', share: 0.25 } };
    expect(noteSentence(sayingOf('en'), note)).toBe(
      'Zone 3 (Pool lawn): new plants, 25% of the way to established. Roots, need and cover of young plants are taken.',
    );
    expect(noteSentence(sayingOf('es'), note)).toMatch(/^La zona 3 \(Pool lawn\): plantas nuevas, a 25\s?% de su establecimiento/);
  });

  it('gathers what is assumed of several zones', () => {
    const assumed = (zoneId: string, input: string) => ({ code: 'input-assumed', details: { zoneId, input } });
    const gathered = gatheredNotes([
      assumed('z1', 'duLq'),
      { code: 'weather-starts-later', details },
      assumed('z2', 'duLq'),
      assumed('z1', 'areaM2'),
    ]);
    expect(gathered.map((note) => noteSentence(sayingOf('en'), note))).toEqual([
      'Weather starts on Tue 1 Sep, 12 days before the month instead of 90: the soil’s store at the start is a guess.',
      '2 zones: uniformity is assumed, not measured.',
      'Zone 3 (Pool lawn): area is assumed, not measured.',
    ]);
  });

  it('rounds to what was measured', () => {
    expect([57_934, 389_634, 1_234_567, 0, -941.4, 12.345].map(roundVolume)).toEqual([57_900, 389_600, 1_235_000, 0, -941, 12.3]);
    expect(aboutVolume(sayingOf('en').formats, null)).toBe('–');
  });
});

describe('the office’s words', () => {
  it('have their arguments read from plain ones and from branches', () => {
    expect(argumentsOf('{a} for {n, plural, one {its {b}} other {# of {c, select, none {} other {{c}}}}}, {m, number}.')).toEqual([
      'a',
      'b',
      'c',
      'm',
      'n',
    ]);
  });

  it('are the same messages in both languages, with the same values', () => {
    const [english, spanish] = [catalogue('en'), catalogue('es')];
    expect(Object.keys(spanish).sort()).toEqual(Object.keys(english).sort());
    for (const [id, text] of Object.entries(english))
      expect({ id, values: argumentsOf(spanish[id as keyof typeof spanish]) }).toEqual({ id, values: argumentsOf(text) });
  });
});
