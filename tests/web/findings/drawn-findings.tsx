import { screen } from '@testing-library/react';
import { FindingsPage } from '../../../apps/web/src/features/findings/FindingsPage.js';
import { builtAccount, builtCrew, builtFinding, builtProperty, gallons } from '../support/built.js';
import { drawPage, type viewerOf } from '../support/draw-page.js';

export const crew2 = builtCrew('crew-2', 'Crew 2');
const quail = builtProperty('p1', 'Quail Commons', {
  zones: [
    { id: 'z1', name: 'Pool lawn', station: 3 },
    { id: 'z2', name: 'Parkway trees', station: 9 },
  ].map((zone) => ({ version: 1, propertyId: 'p1', unmetered: false, areaM2: 100, method: 'spray', plantings: [], ...zone })),
  accounts: [
    builtAccount(
      'a8',
      { allowed: 375_200, needed: 357_300, programmed: 428_900, metered: 437_800 },
      { month: '2026-08', through: '2026-08-31' },
    ),
    builtAccount('a9', { allowed: 252_100, needed: 238_500, programmed: 331_200, metered: 389_600 }),
  ],
});
const zonePart = (zoneId: string, over: number, under: number) => ({
  zoneId,
  minutes: 500,
  neededLitres: gallons(20_000),
  programmedLitres: gallons(20_000 + over - under),
  overLitres: gallons(over),
  underLitres: gallons(under),
});
export const dear = builtFinding('f1', 'over-programmed', {
  property: quail,
  money: 524,
  litres: gallons(92_700),
  controllerId: 'c1',
  says: { code: 'over-programmed', details: { programs: ['A'], zoneIds: ['z1'], percentOfNow: 72 } },
  evidence: { zones: [zonePart('z1', 5500, 0), zonePart('z2', 0, 7900)], habit: { months: 5, mean: 1.02 }, sdLitres: gallons(9000) },
});
export const cheap = builtFinding('f2', 'unexplained use', {
  property: quail,
  money: 40,
  cameBack: 1,
  says: { code: 'unexplained use', details: {} },
});
const thirsty = builtFinding('f3', 'under-programmed', {
  property: quail,
  money: null,
  says: { code: 'under-programmed', details: { zoneIds: ['z2'], programs: [], percentOfNow: null } },
});
const doubtful = builtFinding('f4', 'doubtful reading', {
  property: quail,
  money: null,
  litres: null,
  says: { code: 'lower than last', details: { nextRegister: 90, previousRegister: 100 } },
});
const all = [thirsty, cheap, doubtful, dear];

export const page = (
  given: {
    at?: string;
    findings?: readonly object[];
    more?: Record<string, unknown>;
    viewer?: ReturnType<typeof viewerOf>;
    language?: 'en' | 'es';
  } = {},
) => {
  const { at = '/findings', findings = all, more = {}, ...rest } = given;
  return drawPage(<FindingsPage />, {
    at,
    route: '/findings/:id?',
    answers: {
      findings,
      finding: ({ id }: { id: string }) => all.find((one) => one.id === id) ?? null,
      crews: [crew2],
      findingPrecision: [],
      ...more,
    },
    ...rest,
  });
};
export const last = (calls: readonly { name: string; variables: object }[], name: string) =>
  calls.filter((call) => call.name === name).at(-1)?.variables;
export const article = () => screen.findByRole('article');
