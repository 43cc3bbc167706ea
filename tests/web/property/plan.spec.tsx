import { cleanup, configure, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { CabinetCardPage } from '../../../apps/web/src/features/property/plan/card/CabinetCardPage.js';
import { gallons } from '../support/built.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { page } from './drawn-property.js';

// The plan’s page is fetched when it is first opened.
configure({ asyncUtilTimeout: 10_000 });

afterEach(cleanup);

const zone = (zoneId: string, station: number, unmet: number, wasted: number) => ({
  zoneId,
  station,
  neededLitres: gallons(20_000),
  usedLitres: gallons(20_000),
  unmetLitres: gallons(unmet),
  wastedLitres: gallons(wasted),
  ranOffLitres: 0,
});
const result = (unmet: number, wasted: number, given: object = {}) => ({
  usedLitres: gallons(40_000),
  neededLitres: gallons(40_000),
  unmetLitres: gallons(unmet),
  wastedLitres: gallons(wasted),
  ranOffLitres: 0,
  keyPresses: 0,
  beginsAt: '21:30',
  endsAt: '05:48',
  limits: [],
  breaches: [],
  zones: [zone('z1', 3, unmet, 0), zone('z2', 9, 0, wasted)],
  ...given,
});
const programs = (adjustPercent: number, given: object = {}) => [
  {
    name: 'A',
    days: 'Tue Sat',
    starts: ['21:30'],
    adjustPercent,
    stations: [
      { station: 3, minutes: 40, cycles: 3, soakMinutes: 20, ...given },
      { station: 9, minutes: 20, cycles: null, soakMinutes: null },
    ],
  },
];
const plan = (given: object = {}) => ({
  controllerId: 'c1',
  month: '2026-09',
  reason: null,
  needMonths: ['2025-09'],
  gapShare: 0.004,
  layoutShare: 0,
  present: result(0, 12_000, {
    endsAt: '06:40',
    breaches: [{ rule: 'Stage 2', kind: 'too many days a week', program: 'A', stations: [3, 9], times: 9 }],
  }),
  leastChange: { kind: 'percent and days', programs: programs(80), result: result(1500, 3000, { keyPresses: 2 }) },
  full: { kind: 'full', programs: programs(100), result: result(500, 400, { keyPresses: 11 }) },
  choices: [
    {
      zoneId: 'z1',
      station: 3,
      choices: [
        { choice: 'thirstiest', neededLitres: gallons(20_000), minutes: 40 },
        { choice: 'middle', neededLitres: gallons(14_000), minutes: 28 },
        { choice: 'modest', neededLitres: gallons(5000), minutes: 10 },
      ],
    },
  ],
  impossible: [
    {
      zoneId: 'z1',
      station: 3,
      unmetLitres: gallons(500),
      because: 'the rules leave too few days or minutes',
      freedBy: 'a timer that holds more',
    },
  ],
  ...given,
});

const opened = async (answer: object | null, rest: Parameters<typeof page>[0] = {}) => {
  const asked: unknown[] = [];
  const controller = {
    id: 'c1',
    plan: (given: unknown) => {
      asked.push(given);
      return answer;
    },
  };
  const drawn = page({ ...rest, more: { controller } });
  const summary = await screen.findByText(/^What controller Clubhouse would|^Cómo convendría programar/);
  const before = drawn.calls.filter(({ name }) => name === 'PlanOfController').length;
  await drawn.user.click(summary);
  return { ...drawn, before, asked };
};
const cells = (table: HTMLElement) =>
  within(table)
    .getAllByRole('row')
    .map((row) => [...row.children].map((cell) => cell.textContent?.trim()));

describe('the plan of a controller', () => {
  it('is asked for only when it is opened, and sets both offers beside what is set now', async () => {
    const { before, asked } = await opened(plan());
    expect(before).toBe(0);
    const table = await screen.findByRole('table', { name: 'Controller Clubhouse: now and two offers, side by side' });
    expect(asked).toEqual([{ month: '2026-09' }]);
    expect(cells(table)).toEqual([
      ['The plants need 40,000 gal in the month', 'As set now', 'Least change', 'Full program'],
      ['Uses, gal', '40,000', '40,000', '40,000'],
      ['Leaves unmet, gal', '0', '1,500', '500'],
      ['Wastes, gal', '12,000', '3,000', '400'],
      ['Of that runs off, gal', '0', '0', '0'],
      ['The last run', 'ends at 6:40 am', 'ends at 5:48 am', 'ends at 5:48 am'],
      ['Key presses to enter', '0', '2', '11'],
      ['Rules and limits', 'Stage 2: too many days a week, on 9 days', 'all kept', 'all kept'],
    ]);
    const zones = screen.getByRole('table', { name: /what each way leaves/ });
    expect(cells(zones).slice(1)).toEqual([
      ['3 Pool lawn', '20,000', '0', '0', '1,500', '0', '500', '0'],
      ['9 Parkway trees', '20,000', '0', '12,000', '0', '3,000', '0', '400'],
    ]);
    expect(screen.getByText(/^Against what is set now: A: Tue Sat, was Tue Thu Sat; A: 80%, was 100%\.$/)).toBeTruthy();
    expect(screen.getAllByText(/in 3 cycles, soak 20 min/)).toHaveLength(2);
    expect(screen.getByText(/The need is from the weather of September 2025\..*at most 0.4% more than the best/)).toBeTruthy();
  });

  it('tells what no program can give, why, and what would free it', async () => {
    await opened(plan());
    expect(await screen.findByText('One zone cannot be given what it needs')).toBeTruthy();
    expect(
      screen.getByText(
        '3 Pool lawn lacks 500 gal in the month: the rules leave too few days or minutes. What would free it: a timer that holds more.',
      ),
    ).toBeTruthy();
  });

  it('says with whom the meter is shared, and what that leaves', async () => {
    const shared = { by: 'flow', controllerIds: ['c1'], flowLPerMin: gallons(22), from: '22:00', until: '06:00' };
    await opened(plan({ sharedMeter: shared }));
    expect(
      await screen.findByText(/^Controller Clubhouse waters through the same meter\. Both offers take at most 22(\.0)? gpm at once/),
    ).toBeTruthy();
    cleanup();
    await opened(plan({ sharedMeter: { ...shared, by: 'hours', until: '01:40' } }));
    expect(await screen.findByText(/does not carry all at once\. Both offers keep to 10(:00)? pm until 1:40 am;/)).toBeTruthy();
  });

  it('says what is not kept where nothing can be given out, and which zone lacks how much', async () => {
    const reason = { code: 'NOTHING_KEEPS_ALL', details: { broken: ['outside the hours', 'too many minutes', 'water runs off'] } };
    await opened(plan({ reason, present: null, leastChange: null, full: null, needMonths: [], gapShare: null }));
    expect(
      await screen.findByText(/\(runs outside the hours for watering, too many minutes,? and water runs off\)\. Check its programs/),
    ).toBeTruthy();
    expect(screen.getByText(/^3 Pool lawn lacks 500 gal in the month/)).toBeTruthy();
  });

  it('tells zones that lack water for one cause in one sentence, each with how much', async () => {
    const rules = { because: 'the rules leave too few days or minutes', freedBy: 'a timer that holds more' };
    const impossible = [
      { zoneId: 'z1', station: 3, unmetLitres: gallons(500), ...rules },
      { zoneId: 'z2', station: 9, unmetLitres: gallons(90), because: 'a rule forbids watering', freedBy: 'a timer with more programs' },
      { zoneId: 'z3', station: 6, unmetLitres: gallons(200), ...rules },
    ];
    await opened(plan({ impossible }));
    const heading = await screen.findByRole('heading', { name: '3 zones cannot be given what they need' });
    expect(
      within(heading.parentElement!)
        .getAllByRole('listitem')
        .map(({ textContent }) => textContent),
    ).toEqual([
      expect.stringMatching(
        /^Lacking in the month: 3 Pool lawn \(500 gal\) and 6 Entry beds \(200 gal\)\. In each, the rules leave too few days or minutes\. What would/,
      ),
      expect.stringMatching(/^9 .+ lacks 90\.?0? gal in the month: a rule forbids watering it\./),
    ]);
  });

  it('plans another month when it is chosen', async () => {
    const { user, asked } = await opened(plan());
    await user.selectOptions(await screen.findByLabelText('Month to plan'), 'February 2027');
    await screen.findByRole('table', { name: /side by side/ });
    expect(asked.at(-1)).toEqual({ month: '2027-02' });
  });

  it('says what is missing where nothing can be planned or compared', async () => {
    const reason = { code: 'FLOWS_NOT_KNOWN', details: { zones: ['z3', 'z1'] } };
    await opened(plan({ reason, present: null, leastChange: null, full: null, impossible: [], needMonths: [], gapShare: null }));
    expect(
      await screen.findByText(
        'Flow, precipitation rate or area is not known: Entry beds and Pool lawn. Measure them, and type it in Setup.',
      ),
    ).toBeTruthy();
    cleanup();
    await opened(plan({ present: null, leastChange: null }));
    expect(await screen.findByText(/^No percent, days or start times keep/)).toBeTruthy();
    expect(screen.getByText(/^What is set now is not known/)).toBeTruthy();
  });

  it('speaks Spanish, and shows a client no plan', async () => {
    await opened(plan(), { language: 'es', units: 'metric' });
    expect(await screen.findByText('A una zona no se le puede dar lo que necesita')).toBeTruthy();
    expect(screen.getByText(/^A 3 Pool lawn le faltan 1893 L en el mes: las reglas dejan|^A 3 Pool lawn le faltan/)).toBeTruthy();
    cleanup();
    page({ viewer: viewerOf({ role: 'client', permissions: ['read property', 'read reports'] }) });
    await screen.findByRole('heading', { level: 1 });
    expect(screen.queryByText(/^What controller Clubhouse would/)).toBeNull();
  });
});

describe('zones whose plants do not fit together', () => {
  it('are shown with what is planned for, what each choice gives, its minutes, and the gallons between them', async () => {
    const full = plan().full;
    const zones = full.result.zones.map((each) => ({ ...each, neededLitres: gallons(16_000) }));
    await opened(plan({ full: { ...full, result: { ...full.result, zones } }, impossible: [] }));
    const table = await screen.findByRole('table', { name: /three choices for zones whose plants do not fit together/ });
    expect(cells(table)).toEqual([
      ['Zone', 'Planned for, gal', 'For the thirstiest, gal', 'For the mean of them, gal', 'For the modest, gal', 'Between them, gal'],
      ['3 Pool lawn', '16,000', '20,00040 min', '14,00028 min', '5,00010 min', '15,000'],
    ]);
  });

  it('have no minutes where the full program cannot give the zone enough', async () => {
    await opened(plan());
    const table = await screen.findByRole('table', { name: /three choices for zones whose plants do not fit together/ });
    expect(cells(table)[1]).toEqual(['3 Pool lawn', '20,000', '20,000', '14,000', '5,000', '15,000']);
    expect(screen.getByText(/full program; none where it cannot give a zone enough\. Plants at risk/)).toBeTruthy();
  });
});

describe('the card for the cabinet', () => {
  const month = (name: string, given: object) => ({
    month: name,
    isOff: false,
    neededLitres: gallons(10_000),
    usedLitres: gallons(9_500),
    needMonths: ['2025-11', '2024-11'],
    ...given,
  });
  const card = (given: object = {}) => ({
    ...{ thirstiest: '2026-07', reason: null, shortStations: [9], programs: programs(100), frost: { months: [12, 1], measuredDays: 700 } },
    months: [
      month('2026-11', { programs: [{ ...programs(40)[0], days: 'Tue' }] }),
      month('2026-12', { isOff: true, programs: null, usedLitres: 0 }),
      month('2027-01', { programs: null, usedLitres: null }),
    ],
    ...given,
  });
  const draw = (yearCard: object, language: 'en' | 'es' = 'en') =>
    drawPage(<CabinetCardPage />, {
      language,
      at: '/cabinet/p1/c1',
      route: '/cabinet/:propertyId/:controllerId',
      answers: {
        property: {
          id: 'p1',
          name: 'Quail Commons',
          address: '14 Larch Way',
          zones: [{ id: 'z1', name: 'Pool lawn', station: 3, controllerId: 'c1' }],
        },
        controller: { id: 'c1', name: '1', location: 'Clubhouse', propertyId: 'p1', yearCard },
      },
    });

  it('says what is entered once, what is turned and what that is in minutes, and what lacks', async () => {
    draw(card());
    const turned = await screen.findByRole('table', { name: 'Turn month by month' });
    const rows = within(turned)
      .getAllByRole('row')
      .map(({ textContent }) => textContent);
    expect(rows[1]).toContain('November 202640%Tue');
    expect(rows[2]).toContain('December 2026off');
    expect(rows[3]).toContain('January 2027a program of its own');
    const minutes = within(screen.getByRole('table', { name: 'The same in minutes' })).getAllByRole('row');
    expect(minutes[1]?.textContent).toContain('Pool lawn160');
    expect(screen.getByText(/^Station 9 gets less than half/)).toBeTruthy();
    expect(screen.getByText(/^Frost was measured in December and January/)).toBeTruthy();
    expect(screen.getByText(/licensed electrician/)).toBeTruthy();
    const once = within(screen.getByRole('table', { name: 'Enter once' })).getAllByRole('row');
    expect(once[1]?.textContent).toContain('3: 40');
    expect(once[1]?.textContent).toContain('9: 20');
  });

  it('names the column of every number, for a screen too narrow for heads', async () => {
    draw(card());
    const headsOf = async (name: string) => {
      const [, first] = within(await screen.findByRole('table', { name })).getAllByRole('row');
      return [...(first?.querySelectorAll('td.num') ?? [])].map((cell) => cell.getAttribute('data-head'));
    };
    expect(await headsOf('The same in minutes')).toEqual(['Nov', 'Dec', 'Jan']);
    expect(await headsOf('Turn month by month')).toEqual(['Program A', 'Needs, gal', 'Gets, gal']);
    expect(await headsOf('Enter once')).toEqual(['Percent', 'In all, min']);
  });

  it('says whose weather it is made from, and whether a month stands on one year alone', async () => {
    draw(card());
    expect(await screen.findByText(/the mean of the same months in 2024 and 2025, at least 2 years of each\./)).toBeTruthy();
    cleanup();
    draw(card({ months: [month('2026-11', { programs: programs(40), needMonths: ['2025-11'] }), month('2026-12', { isOff: true })] }));
    expect(await screen.findByText(/from the weather of 2024 and 2025\. At least one month stands on a single year/)).toBeTruthy();
    cleanup();
    draw(card({ months: [month('2026-11', { programs: programs(40), needMonths: ['2025-11'] })] }), 'es');
    expect(await screen.findByText(/sale del clima de 2025\. Cada mes se basa en un solo año/)).toBeTruthy();
  });

  it('names the months that get far more than they need, and no other', async () => {
    const over = month('2027-03', { programs: programs(5), usedLitres: gallons(12_600) });
    draw(card({ months: [month('2026-11', { programs: programs(40), usedLitres: gallons(12_400) }), over] }));
    expect(await screen.findByText(/^In March these programs give over a quarter more .* the full program of that month/)).toBeTruthy();
    cleanup();
    draw(card());
    await screen.findByRole('table', { name: 'Enter once' });
    expect(screen.queryByText(/over a quarter more/)).toBeNull();
    expect(screen.queryByText(/less than three quarters/)).toBeNull();
  });

  it('names the months that get far less than they need', async () => {
    const [enough, under] = [7600, 7400].map((used, at) => month(`2026-${11 + at}`, { programs: programs(40), usedLitres: gallons(used) }));
    draw(card({ months: [enough, under] }));
    expect(await screen.findByText(/^In December these programs give less than three quarters of what the plants need/)).toBeTruthy();
  });

  it('says of one month of frost what it says of several, in both languages', async () => {
    const frost = { months: [1], measuredDays: 700 };
    draw(card({ frost }));
    expect(await screen.findByText('Frost was measured in January: shut down before it begins, start up after it ends.')).toBeTruthy();
    cleanup();
    draw(card({ frost }), 'es');
    expect(await screen.findByText(/^Se midieron heladas en enero: cierre antes de que empiece ese mes/)).toBeTruthy();
  });

  it('tells which night a start after midnight is in, and nothing of it where none is', async () => {
    draw(card({ programs: programs(100).map((program) => ({ ...program, starts: ['22:00', '00:30'] })) }));
    expect(await screen.findByText(/^Days begin at midnight: a start at 12:30 am is early on the day/)).toBeTruthy();
    cleanup();
    draw(card());
    await screen.findByRole('table', { name: 'Enter once' });
    expect(screen.queryByText(/^Days begin at midnight/)).toBeNull();
  });

  it('says why there is none, and the cautions all the same', async () => {
    draw(card({ thirstiest: null, reason: { code: 'NO_ZONES', details: {} }, programs: [], months: [], frost: null }));
    expect(await screen.findByText(/^No zone is assigned to it/)).toBeTruthy();
    expect(screen.getByText(/^Nobody has measured the lowest temperatures/)).toBeTruthy();
  });
});
