import { describe, expect, it } from 'vitest';
import { noNames } from '../../../apps/web/src/says/names.js';
import { inputSubjects, surerSentence } from '../../../apps/web/src/says/surer-sentence.js';
import { sayingOf } from './saying-of.js';

const subjects = { zone: 'z1', controller: 'c1', meter: 'm1', weather: null } as const;
const inputs = Object.entries(inputSubjects).map(([input, kind]) => ({ input, kind, subjectId: subjects[kind] }));

describe('what would make a gap surer', () => {
  it.each([
    ['flow', 'z1', 'Measure the flow of zone 3 (Pool lawn).'],
    ['rainSensor', 'c1', 'Look up at how much rain the sensor of controller Clubhouse stops, and test it.'],
    ['apportioning', 'm1', 'Read meter Irrigation meter on the first day of the month.'],
    ['rain', null, 'Put a rain gauge on the property.'],
  ])('says %s of %s by name', (input, subjectId, sentence) => {
    expect(surerSentence(sayingOf('en'), { input, subjectId })).toBe(sentence);
  });

  it('has a sentence for every input in both languages, with the name of what it is an input of', () => {
    const names = { zone: 'Pool lawn', controller: 'Clubhouse', meter: 'Irrigation meter', weather: '' };
    for (const language of ['en', 'es'] as const) {
      const said = inputs.map(({ kind, ...each }) => [kind, surerSentence(sayingOf(language), each)] as const);
      for (const [kind, sentence] of said) expect(sentence).toContain(names[kind]);
      expect(new Set(said.map(([, sentence]) => sentence)).size).toBe(inputs.length);
    }
  });

  it('does without a name that is not known, and without words for an input of a later version', () => {
    const nameless = sayingOf('en', 'us', noNames);
    expect(surerSentence(nameless, { input: 'meter', subjectId: 'gone' })).toBe('Have the meter tested.');
    expect(surerSentence(nameless, { input: 'flow', subjectId: null })).toBe('Measure the flow of one zone.');
    expect(surerSentence(nameless, { input: 'moonlight', subjectId: null })).toBe('moonlight');
  });
});
