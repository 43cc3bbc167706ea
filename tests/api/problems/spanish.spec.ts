import { beforeAll, describe, expect, it } from 'vitest';
import { Permission } from '../../../apps/api/src/platform/identity/permission.js';
import { platformProblems } from '../../../apps/api/src/platform/problems/platform.problems.js';
import { catalogues } from '../../../apps/api/src/problem-page.js';
import { problemSentence } from '../../../apps/web/src/i18n/problems/problem-sentence.js';
import { expectedInSpanish } from '../../../apps/web/src/i18n/problems/spanish-expected.js';
import { fieldInSpanish } from '../../../apps/web/src/i18n/problems/spanish-fields.js';
import { spanishProblems } from '../../../apps/web/src/i18n/problems/spanish-problems.js';
import { permissionInSpanish, thingInSpanish } from '../../../apps/web/src/i18n/problems/spanish-words.js';
import { type SaidInSources, saidInSources } from '../../support/said-in-sources.js';

const makers = catalogues.flatMap(({ problems }) => Object.values(problems));
/** Details that show their own names. */
const named = new Proxy({}, { get: (_, name) => `<${String(name)}>` });
/** A number with the sign of its unit is the same in both languages. */
const WITH_UNIT_SIGN = /^\{} (°|%|mm|min|kPa|gpm|m|L|m²|°C|m\/s|MJ\/m²|L\/min|mm\/h)$/;
/** Words of English that are none of Spanish. */
const ENGLISH = /\b(the|this|that|is|was|of|and|at most|expected|again|report|office)\b/i;

describe('what the server refuses, for who reads Spanish', () => {
  it('has a Spanish sentence for every code that the api can say, and for no other', () => {
    expect(makers.length).toBeGreaterThan(50);
    expect(Object.keys(spanishProblems).sort()).toEqual(makers.map(({ code }) => code).sort());
  });

  it('is a whole sentence in Spanish, with and without details', () => {
    for (const { code } of makers)
      for (const details of [named, {}, null]) {
        const sentence = problemSentence('es-US', { code, message: 'The server speaks English.', details });
        expect(sentence, code).toMatch(/\S.*\.$/);
        expect(sentence.replace(/[<«][^>»]*[>»]/g, ''), code).not.toMatch(ENGLISH);
        expect(sentence, code).not.toMatch(/undefined|null|\[object/);
      }
  });

  it('leaves the server’s own sentence to who reads English', () => {
    expect(problemSentence('en-US', { code: 'LAST_OWNER', message: 'This is the last owner.' })).toBe('This is the last owner.');
  });

  it('says a code that this version does not know in Spanish too', () => {
    expect(problemSentence('es-US', { code: 'SOMETHING_NEWER', message: 'Something newer.' })).toMatch(/^Esta página .*SOMETHING_NEWER/);
  });

  it('says what was found and what is expected', () => {
    const { code, message, details } = platformProblems.valueRefused({ field: 'hours[2].fromMinute', found: 1500, expected: '0 to 1439' });
    expect(problemSentence('es-US', { code, message, details })).toBe(
      'horario 2, desde qué hora: se encontró 1500; se espera de 0 a 1439.',
    );
    expect(expectedInSpanish('twelve numbers, each 0 to 100 minutes')).toBe('doce números, cada uno de 0 a 100 minutos');
    expect(expectedInSpanish('1 to 5000 letters')).toBe('de 1 a 5000 letras');
  });
});

describe('the words in details of problems', () => {
  let said: SaidInSources;
  beforeAll(() => {
    said = saidInSources();
  });

  it('has every expectation of the sources in Spanish', () => {
    expect(said.expected.size).toBeGreaterThan(100);
    expect(
      [...said.expected].filter((text) => !WITH_UNIT_SIGN.test(text) && expectedInSpanish(text.replaceAll('{}', '7')) === null),
    ).toEqual([]);
  });

  it('has every field, thing and permission in Spanish', () => {
    const words = [...said.fields].flatMap((field) =>
      field
        .replace(/\[\{}]/g, '')
        .split(/[.,] ?|\{}/)
        .filter(Boolean),
    );
    expect(words.length).toBeGreaterThan(60);
    expect(words.filter((word) => fieldInSpanish(word) === word)).toEqual([]);
    expect([...said.things].filter((thing) => thing !== 'plan' && thingInSpanish(thing) === thing)).toEqual([]);
    expect(Object.values(Permission).filter((word) => permissionInSpanish(word) === word)).toEqual([]);
  });
});
