import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { fieldAids } from '../../../apps/web/src/features/setup/things/aids/field-aids.js';
import { workOut } from '../../../apps/web/src/features/setup/things/aids/work-out.js';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { formatsFor } from '../../../apps/web/src/i18n/formats.js';
import { builtProperty } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const ANYWHERE = { currency: 'USD', timeZone: 'America/Los_Angeles' };
const us = formatsFor({ ...ANYWHERE, language: 'en', units: 'us' });
const aid = (field: string, name: string) => fieldAids[field]!.find((one) => one.name === name)!;
const worked = (field: string, name: string, typed: Readonly<Record<string, string>>, formats = us) =>
  workOut(formats, aid(field, name), typed);
const figure = (field: string, name: string, typed: Readonly<Record<string, string>>, kind: 'rate' | 'flow') => {
  const answer = worked(field, name, typed);
  return 'value' in answer ? us.figureOf(kind, answer.value) : answer;
};

describe('a field worked out', () => {
  it('gives the rate of heads as extension texts print it', () => {
    const heads = { headFlow: '6', headSpacing: '25', rowSpacing: '30' };
    // 96.25 · 6 / (25 · 30) = 0.77 in/h (extension texts on sprinkler spacing; from memory).
    expect(figure('precipMmPerH', 'rateOfHeads', heads, 'rate')).toBe('0.77');
    // A half circle of half the flow waters half the ground: matched heads.
    expect(figure('precipMmPerH', 'rateOfHeads', { ...heads, headFlow: '3', headArc: '180' }, 'rate')).toBe('0.77');
    // In equal triangles rows lie 0.866 of the spacing apart: 96.25 · 6 / (25 · 21.65) = 1.07.
    expect(figure('precipMmPerH', 'rateOfHeads', { ...heads, rowSpacing: '' }, 'rate')).toBe('1.07');
  });

  it('gives the rate of drip lines', () => {
    // 231.1 · 0.9 / (18 · 12) = 0.963 in/h (arithmetic).
    expect(figure('precipMmPerH', 'rateOfDripGrid', { emitterFlow: '0.9', lineSpacing: '18', emitterSpacing: '12' }, 'rate')).toBe('0.96');
    // Two emitters of 3 L/h on a square metre: 6 mm/h (a public metric drip text).
    const metric = formatsFor({ ...ANYWHERE, language: 'es', units: 'metric' });
    const answer = worked('precipMmPerH', 'rateOfDripGrid', { emitterFlow: '3', lineSpacing: '1000', emitterSpacing: '500' }, metric);
    expect('value' in answer && answer.value).toBeCloseTo(6, 9);
  });

  it('gives the flow of a zone, and at another pressure', () => {
    // 6 · 1.0 + 4 · 0.5 gpm (public course page on precipitation rates).
    const heads = { headCount: '6', headFlow: '1', otherHeadCount: '4', otherHeadFlow: '0.5' };
    expect(figure('flowLPerMin', 'flowOfZone', heads, 'flow')).toBe('8');
    // 30 to 60 psi raises a flow by 41 %: √2.
    expect(figure('flowLPerMin', 'flowOfZone', { ...heads, chartPressure: '30', zonePressure: '60' }, 'flow')).toBe('11.3');
    expect(figure('flowLPerMin', 'flowOfZone', { ...heads, zonePressure: '60' }, 'flow')).toBe('8');
  });

  it('gives the factor of the ordinance in force when the landscape was approved', () => {
    const etaf = (approvedOn: string, landscapeUse: string, ordinanceOf = 'California') => {
      const answer = worked('allowanceEtaf', 'etafOfOrdinance', { ordinanceOf, landscapeUse, approvedOn });
      return 'value' in answer ? answer.value : answer;
    };
    // 23 CCR 492.4, current text and that of 2009.
    expect([etaf('2026-03-01', 'residential'), etaf('2026-03-01', 'non-residential')]).toEqual([0.55, 0.45]);
    expect(etaf('2012-03-01', 'non-residential')).toBe(0.7);
    expect(etaf('1999-03-01', 'residential')).toEqual({ lacks: 'none' });
    expect(etaf('2026-03-01', 'non-residential', 'San Diego')).toEqual({ lacks: 'none' });
  });

  it('says what is not filled in, what is no number, and what cannot be', () => {
    expect(worked('precipMmPerH', 'rateOfHeads', { headFlow: '6' })).toEqual({ lacks: 'unfilled' });
    expect(worked('precipMmPerH', 'rateOfHeads', { headFlow: 'six', headSpacing: '25' })).toEqual({
      wrong: { key: 'headFlow', why: 'noNumber', found: 'six' },
    });
    expect(worked('precipMmPerH', 'rateOfHeads', { headFlow: '6', headSpacing: '0' })).toEqual({ lacks: 'impossible' });
    expect(worked('precipMmPerH', 'rateOfHeads', { headFlow: '6', headSpacing: '25', headArc: '540' })).toEqual({ lacks: 'impossible' });
  });
});

it('is taken over into the form and sent with it', async () => {
  const zone = {
    __typename: 'Zone',
    id: 'z1',
    version: 3,
    retiredAt: null,
    propertyId: 'p1',
    name: 'Lawn',
    controllerId: null,
    station: null,
    meterId: null,
    unmetered: false,
    areaM2: 100,
    plants: null,
    method: 'rotor',
  };
  const { user, calls } = drawPage(<SetupPage />, {
    route: '/setup/*',
    at: '/setup/properties/p1?thing=z1&kind=zone',
    viewer: ownerOf(),
    answers: {
      property: builtProperty('p1', 'Quail Commons', { zones: [{ ...zone, plantings: [] }], controllers: [] }),
      clients: [],
      properties: [],
      waterSuppliers: [],
      weatherStations: [],
      changeZone: { ...zone, version: 4 },
    },
  });
  const form = await screen.findByRole('dialog', { name: 'Lawn' });
  await user.click(within(form).getByText('Work it out: Precipitation rate'));
  const [flow] = within(form).getAllByLabelText('Flow of a head');
  await user.type(flow!, '6');
  await user.type(within(form).getByLabelText('From head to head in a row'), '25');
  await user.type(within(form).getByLabelText(/From row to row/), '30');
  await user.click(within(form).getByRole('button', { name: 'Take 0.77 in/h' }));
  await user.click(within(form).getByRole('button', { name: 'Save the change' }));
  await waitFor(() => expect(calls.some(({ name }) => name === 'ChangeZone')).toBe(true));
  const { input } = calls.find(({ name }) => name === 'ChangeZone')!.variables as { input: Record<string, number> };
  expect(input['precipMmPerH']).toBeCloseTo(0.77 * 25.4, 9);
});
