import { gql } from '@apollo/client';
import { useQuery } from '@apollo/client/react';
import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { FindingPhotos, photosOfFinding } from '../../../apps/web/src/features/findings/evidence/FindingPhotos.js';
import { RoutesPage } from '../../../apps/web/src/features/fieldwork/routes/RoutesPage.js';
import { builtCrew, builtFinding } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { builtStop, builtVisit, order } from './built-stop.js';

// What the office reads of what crews did, and did not do.

afterEach(cleanup);

const routes = (stop: Record<string, unknown>, language: 'en' | 'es' = 'en') =>
  drawPage(<RoutesPage />, {
    at: '/routes',
    route: '/routes',
    language,
    answers: { routes: [stop['route']], crews: [builtCrew('crew-1', 'Crew 1')], workOrders: [], properties: [] },
  });

describe('a stop in the office’s list', () => {
  it('says of work that a crew left without a word how it stands, and opens its dialog to plan it again', async () => {
    const { user, address } = routes(builtStop({ visit: builtVisit({ closedAt: '2026-09-24T18:05:00Z' }), workOrders: [order] }));
    const line = (await screen.findByText(/Adjust: Set program B as planned/)).closest('li')!;
    expect(line.textContent).toContain('the crew did not say how it ended');
    expect(line.textContent).not.toContain('45 min');
    await user.click(within(line).getByRole('button', { name: 'Plan it again, or take it back: Adjust: Set program B as planned' }));
    expect(address()).toBe('/routes?order=w1');
    expect(screen.getByText('Closed at 11:05 am')).toBeTruthy();
  });

  it('offers no planning again while the crew is there, nor of what was done', async () => {
    routes(builtStop({ visit: builtVisit(), workOrders: [order, { ...order, id: 'w2', what: 'Flush', state: 'done' }] }));
    await screen.findByRole('button', { name: 'Give to another, or take back: Adjust: Set program B as planned' });
    expect(screen.queryByRole('button', { name: /^Plan it again/ })).toBeNull();
    expect(screen.queryByRole('button', { name: /Flush/ })).toBeNull();
  });

  it('tells of a visit begun by mistake by whom and when, and that it does not count', async () => {
    const withdrawnVisit = builtVisit({ withdrawnAt: '2026-09-24T17:04:00Z' });
    routes(builtStop({ withdrawnVisit }));
    await screen.findByText('Begun by mistake at 10:00 am (Dell Okafor), taken back at 10:04 am; it does not count');
    cleanup();
    routes(builtStop({ withdrawnVisit: { ...withdrawnVisit, recordedBy: null } }), 'es');
    await screen.findByText(/^Empezada por error a las 10:00[^(]*, quitada a las 10:04[^(]*; no cuenta$/);
    cleanup();
    // Somebody came after: what counts is their visit.
    routes(builtStop({ withdrawnVisit, visit: builtVisit({ id: 'v2', arrivedAt: '2026-09-24T17:30:00Z' }) }));
    await screen.findByText('Begun at 10:30 am');
    expect(screen.queryByText(/Begun by mistake/)).toBeNull();
  });
});

const asked = gql`
  query Photos {
    finding(id: "f1") {
      id
      ...PhotosOfFinding
    }
  }
`;
const photosDocument = { ...asked, definitions: [...asked.definitions, ...photosOfFinding.definitions] };

function Photos() {
  const { data } = useQuery<{ finding: never }>(photosDocument);
  return data ? <FindingPhotos finding={data.finding} /> : null;
}

const photo = (id: string, given: object = {}) => ({
  ...{ id, takenAt: '2026-09-24T17:20:00Z', arrivedAt: '2026-09-24T17:25:00Z', kind: 'problem', word: null, width: 400, height: 300 },
  ...{ latitude: null, longitude: null },
  ...given,
});

it('tells where a photo was taken where its taker wanted it, also on the equator, and nothing where not', async () => {
  const photos = [
    photo('a', { latitude: 38.0708333, longitude: -122.5 }),
    photo('b', { latitude: 0, longitude: 0 }),
    photo('c'),
    photo('d', { arrivedAt: null }),
  ];
  drawPage(<Photos />, { answers: { finding: builtFinding('f1', 'seen on site', { photos }) } });
  const [first, second, third, fourth] = within(await screen.findByRole('list')).getAllByRole('listitem');
  expect(first?.textContent).toBe('Taken at 38.07083, -122.50000');
  expect(second?.textContent).toBe('Taken at 0.00000, 0.00000');
  expect(third?.textContent).toBe('');
  expect(within(third!).getByRole('img').getAttribute('src')).toBe('/api/photos/c');
  expect(fourth?.textContent).toBe('One photo is still on the phone that took it.');
});
