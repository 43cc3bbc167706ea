import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { builtCrew, builtProperty } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const SQ_FT = 0.09290304; // m², exactly: NIST SP 811, B.8 (international foot)

const zone = {
  __typename: 'Zone',
  id: 'z1',
  version: 3,
  retiredAt: null,
  propertyId: 'p1',
  name: 'Front lawn',
  controllerId: 'c1',
  station: 1,
  meterId: null,
  unmetered: false,
  areaM2: 1000.4,
  plants: 'turf cool-season',
  method: 'spray',
  plantings: [],
};
const controller = {
  __typename: 'Controller',
  id: 'c1',
  version: 1,
  retiredAt: null,
  propertyId: 'p1',
  name: 'A',
  stations: 8,
  cycleSoak: null,
};
const quail = (given: object = {}) => builtProperty('p1', 'Quail Commons', { zones: [zone], controllers: [controller], ...given });
const client = (id: string, name: string) => ({
  __typename: 'Client',
  id,
  version: 1,
  retiredAt: null,
  name,
  emails: ['board@quail.example'],
  language: null,
  units: null,
  notToExceed: 250,
  properties: [],
});

const draw = (at: string, answers: Readonly<Record<string, unknown>>) =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at,
    viewer: ownerOf(),
    answers: { property: quail(), clients: [], properties: [], waterSuppliers: [], weatherStations: [], ...answers },
  });

const inputOf = (calls: ReturnType<typeof draw>['calls'], name: string) => calls.filter((call) => call.name === name).at(-1)?.variables;

describe('the form of a kept thing', () => {
  it('is typed in the organization’s units, and sends untouched values as they were kept', async () => {
    const { user, calls } = draw('/setup/properties/p1?thing=z1&kind=zone', { changeZone: { ...zone, version: 4 } });
    const form = await screen.findByRole('dialog', { name: 'Front lawn' });
    // 1000.4 m² is 10,768.2 sq ft.
    expect(within(form).getByLabelText<HTMLInputElement>('Area').value).toBe('10,768');
    await user.clear(within(form).getByLabelText('Name'));
    await user.type(within(form).getByLabelText('Name'), 'Front lawn, west');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(inputOf(calls, 'ChangeZone')).toMatchObject({
      id: 'z1',
      version: 3,
      input: { name: 'Front lawn, west', areaM2: 1000.4, propertyId: 'p1', station: 1 },
    });
  });

  it('turns what is typed into what is stored', async () => {
    const { user, calls } = draw('/setup/properties/p1?thing=z1&kind=zone', { changeZone: { ...zone, version: 4 } });
    const form = await screen.findByRole('dialog', { name: 'Front lawn' });
    await user.clear(within(form).getByLabelText('Area'));
    await user.type(within(form).getByLabelText('Area'), '2,000');
    await user.type(within(form).getByLabelText(/Precipitation rate/), '1.5');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() => expect(inputOf(calls, 'ChangeZone')).toBeDefined());
    const { input } = inputOf(calls, 'ChangeZone') as { input: Record<string, number> };
    expect(input['areaM2']).toBeCloseTo(2000 * SQ_FT, 9);
    expect(input['precipMmPerH']).toBeCloseTo(1.5 * 25.4, 9);
  });

  it('leaves what is not said unsaid', async () => {
    const { user, calls } = draw('/setup/properties/p1?thing=c1&kind=controller', { changeController: { ...controller, version: 2 } });
    const form = await screen.findByRole('dialog', { name: 'A' });
    await user.selectOptions(within(form).getByLabelText('Rain sensor'), 'yes');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() =>
      expect(inputOf(calls, 'ChangeController')).toMatchObject({ input: { rainSensor: true, cycleSoak: null, masterValve: null } }),
    );
  });

  it('says what is missing and what is no number, and sends nothing', async () => {
    const { user, calls } = draw('/setup/properties/p1?thing=new&kind=zone', {});
    const form = await screen.findByRole('dialog', { name: 'Add a zone' });
    await user.type(within(form).getByLabelText('Area'), 'about 1.200,5');
    await user.click(within(form).getByRole('button', { name: 'Add it' }));
    const problems = await within(form).findByRole('alert');
    expect(within(problems).getByRole('link', { name: 'Name is missing.' })).toBeDefined();
    expect(within(problems).getByRole('link', { name: 'Area: “about 1.200,5” is not a number. Write it as 1234.5.' })).toBeDefined();
    expect(inputOf(calls, 'CreateZone')).toBeUndefined();
  });

  it('shows who changed it meanwhile, and saves over it only when asked', async () => {
    let asked = 0;
    const now = { ...zone, version: 5, name: 'Front lawn, renamed' };
    const { user, calls } = draw('/setup/properties/p1?thing=z1&kind=zone', {
      property: () => quail(asked > 0 ? { zones: [now] } : {}),
      changeZone: () => {
        asked += 1;
        return asked === 1
          ? { __typename: 'ChangedMeanwhile', id: 'z1', version: 5, changedBy: 'Ana Prado', changedAt: '2026-09-24T17:05:00Z' }
          : { ...now, version: 6 };
      },
    });
    const form = await screen.findByRole('dialog', { name: 'Front lawn' });
    await user.clear(within(form).getByLabelText('Name'));
    await user.type(within(form).getByLabelText('Name'), 'West lawn');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    // 17:05 UTC is 10:05 on the organization's clocks in September.
    expect(await screen.findByText(/Ana Prado changed it at 10:05 am/)).toBeDefined();
    expect(await screen.findByText('Name: Front lawn, renamed now, West lawn as you typed it')).toBeDefined();
    await user.click(screen.getByRole('button', { name: 'Save mine over it' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(inputOf(calls, 'ChangeZone')).toMatchObject({ version: 5, input: { name: 'West lawn' } });
  });

  it('sends a new one under one id, also after a lost answer; what was typed otherwise meanwhile is another', async () => {
    const { user, calls } = draw('/setup/clients?thing=new&kind=client', {
      createClient: () => {
        throw new Error('no answer');
      },
    });
    const form = await screen.findByRole('dialog', { name: 'Add a client' });
    const add = () => user.click(within(form).getByRole('button', { name: 'Add it' }));
    const ids = () => calls.filter((call) => call.name === 'CreateClient').map(({ variables }) => variables['id']);
    const asked = (times: number) => waitFor(() => expect(ids()).toHaveLength(times));
    await user.type(within(form).getByLabelText('Name'), 'Quail Commons HOA');
    for (const times of [1, 2]) await add().then(() => asked(times));
    await user.type(within(form).getByLabelText('Name'), ' West');
    await add();
    await asked(3);
    const [first, again, other] = ids();
    expect(first).toMatch(/^[0-9a-f-]{36}$/);
    expect([again === first, other === first]).toEqual([true, false]);
  });

  it('says which name is taken', async () => {
    const { user } = draw('/setup/clients?thing=new&kind=client', { createClient: { __typename: 'NameTaken', name: 'Quail Commons HOA' } });
    const form = await screen.findByRole('dialog', { name: 'Add a client' });
    await user.type(within(form).getByLabelText('Name'), 'Quail Commons HOA');
    await user.click(within(form).getByRole('button', { name: 'Add it' }));
    expect((await within(form).findByRole('alert')).textContent).toContain('Another already has the name Quail Commons HOA.');
  });

  it('takes a thing out of use only when nothing needs it', async () => {
    const { user, calls } = draw('/setup/clients?thing=k1&kind=client', {
      clients: [client('k1', 'Quail Commons HOA')],
      retireClient: { __typename: 'StillInUse', by: 'property', count: 2 },
    });
    const form = await screen.findByRole('dialog', { name: 'Quail Commons HOA' });
    await user.click(within(form).getByRole('button', { name: 'Take out of use' }));
    expect(inputOf(calls, 'RetireClient')).toBeUndefined();
    await user.click(within(form).getByRole('button', { name: 'Take it out of use' }));
    expect((await within(form).findByRole('alert')).textContent).toContain('2 still need it (property)');
    expect(inputOf(calls, 'RetireClient')).toMatchObject({ id: 'k1', version: 1 });
  });
});

describe('the lists', () => {
  it('finds a property by name or client, in the address too', async () => {
    const { user, address } = draw('/setup/properties', {
      properties: [builtProperty('p1', 'Quail Commons'), builtProperty('p2', 'Alder Row')],
    });
    await user.type(await screen.findByRole('searchbox', { name: 'Find by name' }), 'alder');
    await waitFor(() => expect(screen.queryByText('Quail Commons')).toBeNull());
    expect(screen.getByText('Alder Row')).toBeDefined();
    expect(address()).toBe('/setup/properties?find=alder');
    await user.type(screen.getByRole('searchbox', { name: 'Find by name' }), 'xx');
    expect(await screen.findByText('None is called alderxx.')).toBeDefined();
  });

  it('tells a zone by its station, area, method and plants', async () => {
    draw('/setup/properties/p1', {});
    const row = await screen.findByRole('row', { name: /Front lawn/ });
    expect(within(row).getByText('A 1, 10,768 sq ft, spray, cool-season turf')).toBeDefined();
  });

  it('an empty list says how it is filled', async () => {
    draw('/setup/suppliers', {});
    expect(await screen.findByRole('heading', { name: 'No water supplier is kept yet' })).toBeDefined();
    expect(screen.getByRole('button', { name: 'Add a watering rule' })).toBeDefined();
  });
});

describe('what a month is planned from', () => {
  const dell = {
    id: 'm1',
    version: 1,
    role: 'crewLead',
    person: { id: 'p1', name: 'Dell Okafor', email: 'dell@larkspur.example', language: 'en' },
  };
  const crews = [builtCrew('crew-1', 'Crew 1', { members: [dell], skills: ['backflow'], startLatitude: 38.06, startLongitude: -120.98 })];

  it('tells a crew’s people, days, hours and skills, and changes them', async () => {
    const { user, calls } = draw('/setup/crews', { crews, members: [dell], changeCrew: { __typename: 'Crew', id: 'crew-1', version: 2 } });
    expect(await screen.findByText('Dell Okafor · Mon to Fri, 7:00 am to 3:30 pm · backflow')).toBeDefined();
    await user.click(screen.getByRole('button', { name: /Change/ }));
    const form = await screen.findByRole('dialog', { name: 'Crew 1' });
    await user.click(within(form).getByRole('checkbox', { name: 'Saturday' }));
    await user.type(within(form).getByLabelText(/^Skills/), ', trees');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() =>
      expect(inputOf(calls, 'ChangeCrew')).toMatchObject({
        input: {
          memberIds: ['m1'],
          skills: ['backflow', 'trees'],
          workingDays: [1, 2, 3, 4, 5, 6],
          dayStartsMinute: 420,
          dayEndsMinute: 930,
          breakMinutes: 30,
          startLatitude: 38.06,
        },
      }),
    );
  });

  it('keeps how a property is visited, and says which hours cannot be', async () => {
    const terms = {
      version: 4,
      everyDays: 14,
      visitMinutes: 60,
      skills: [],
      hours: [{ kind: 'closed', weekdays: [1, 2, 3, 4, 5], fromMinute: 480, untilMinute: 780 }],
    };
    const { user, calls } = draw('/setup/properties/p1', {
      property: quail({ visitTerms: terms }),
      setVisitTerms: { __typename: 'VisitTerms', ...terms, version: 5 },
    });
    expect(await screen.findByRole('heading', { name: 'Visited every 14 days' })).toBeDefined();
    expect(screen.getByText('Nobody works there Mon to Fri, 8:00 am to 1:00 pm')).toBeDefined();
    await user.click(screen.getByRole('button', { name: 'Change how it is visited' }));
    const form = await screen.findByRole('dialog', { name: 'Visits to Quail Commons' });
    const every = within(form).getByLabelText(/Days between visits/);
    await user.clear(every);
    await user.type(every, '0');
    await user.clear(within(form).getByLabelText('Until'));
    await user.type(within(form).getByLabelText('Until'), '07:00');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    const problems = await within(form).findByRole('alert');
    expect(within(problems).getByRole('link', { name: /“0” is not a whole number from 1 to 366/ })).toBeDefined();
    expect(within(problems).getByRole('link', { name: '07:00 is not after the beginning of these hours.' })).toBeDefined();
    expect(inputOf(calls, 'SetVisitTerms')).toBeUndefined();
    await user.clear(every);
    await user.type(every, '7');
    await user.click(within(form).getByRole('button', { name: 'Remove these hours' }));
    await user.click(within(form).getByRole('button', { name: 'Add hours of the gate' }));
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() =>
      expect(inputOf(calls, 'SetVisitTerms')).toEqual({
        propertyId: 'p1',
        version: 4,
        input: {
          everyDays: 7,
          visitMinutes: 60,
          skills: [],
          hours: [{ kind: 'open', weekdays: [1, 2, 3, 4, 5], fromMinute: 420, untilMinute: 960 }],
        },
      }),
    );
  });
});
