import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { lastDayOf, monthsBetween } from '../../../apps/web/src/features/setup/weather/months-between.js';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const dayOf = (day: string, given: object = {}) => ({
  stationId: 's1',
  day,
  tmaxC: 30,
  tminC: 15,
  rhMaxPercent: 88,
  rhMinPercent: 34,
  dewPointC: 13,
  windMPerS: 2,
  solarMjPerM2: 26.04,
  rainMm: 0,
  reckonedRainMm: 0,
  reckonedRainSdMm: 0,
  rainFromNeighbour: false,
  etoMm: 6.35,
  estimated: false,
  etoReason: null,
  filling: null,
  marks: [],
  ...given,
});
const NOTHING = {
  tmaxC: null,
  tminC: null,
  rhMaxPercent: null,
  rhMinPercent: null,
  dewPointC: null,
  windMPerS: null,
  solarMjPerM2: null,
  rainMm: null,
};
const stuck = (value: string) => ({ value, mark: 'persistence', effect: 'refused', reason: 'stuck' });

const days = [
  dayOf('2026-07-01'),
  dayOf('2026-07-02', { marks: [stuck('rhMaxPercent'), stuck('rhMinPercent')] }),
  dayOf('2026-07-03', {
    ...NOTHING,
    estimated: true,
    etoMm: 5.08,
    reckonedRainMm: 2.54,
    reckonedRainSdMm: 1.27,
    rainFromNeighbour: true,
    filling: { source: 'neighbour', stationName: 'Piedra Bench', days: 52 },
  }),
  dayOf('2026-07-04', { ...NOTHING, reckonedRainMm: null, estimated: true, filling: { source: 'normals', stationName: null, days: 28 } }),
  dayOf('2026-07-05', { ...NOTHING, reckonedRainMm: null, etoMm: null, etoReason: 'not-recorded' }),
];
const normal = (month: number) =>
  month === 7
    ? { month, days: 28, etoMm: 6.1, tmaxC: 31, tminC: 15, reason: null }
    : { month, days: 0, etoMm: null, tmaxC: null, tminC: null, reason: 'too-few-days' };
const station = {
  __typename: 'WeatherStation',
  id: 's1',
  name: 'Fennel Hollow East',
  firstDay: '2026-05-20',
  lastDay: '2026-07-05',
  neighbour: { id: 's2', name: 'Piedra Bench', distanceKm: 11 },
  normals: Array.from({ length: 12 }, (_, at) => normal(at + 1)),
};

const draw = (given: object | null = {}, options: Partial<Parameters<typeof drawPage>[1]> = {}) =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at: '/setup/stations/s1',
    viewer: ownerOf(),
    answers: { weatherStation: given && { ...station, ...given }, weatherDays: days },
    ...options,
  });

const rowOf = async (day: RegExp) => within((await screen.findByText(day)).closest('tr') as HTMLElement);

describe('the days of a weather station', () => {
  it('say in words what was marked, estimated and why there is nothing', async () => {
    draw();
    expect(await screen.findByRole('heading', { name: '5 days: one with a refused value, 2 estimated, one not known' })).toBeDefined();
    const second = await rowOf(/2 Jul/);
    expect(
      second.getByText('Highest humidity and lowest humidity: the same for six days or more, the sensor is stuck (not used).'),
    ).toBeDefined();
    expect(second.getByText('88').tagName).toBe('DEL');
    expect(second.getByText('86').tagName).toBe('TD');
    const third = await rowOf(/3 Jul/);
    expect(third.getByText('Estimated from Piedra Bench, by 52 days that both measured.')).toBeDefined();
    expect(third.getByText('Rain as the neighbouring station measured it, 0.05 in more or less.')).toBeDefined();
    // 5.08 mm are 0.2 in, 2.54 mm are 0.1 in, exactly.
    expect(third.getByText('0.20').tagName).toBe('I');
    expect(third.getByText('0.10').tagName).toBe('I');
    expect((await rowOf(/4 Jul/)).getByText('Estimated: the mean of 28 days of this month on record.')).toBeDefined();
    expect((await rowOf(/5 Jul/)).getByText('Nobody sent this day.')).toBeDefined();
    expect((await rowOf(/1 Jul/)).queryByText(/used|Estimated/)).toBeNull();
    // On a phone each figure stands behind the head of its column.
    const figure = second.getByText('0.25').closest('td');
    const column = [...figure!.parentElement!.children].indexOf(figure!);
    expect(figure!.dataset['head']).toBe('Reference ET, in');
    expect(screen.getAllByRole('columnheader')[column]!.textContent).toBe('Reference ET, in');
  });

  it('are those of the month in the address, the newest at first', async () => {
    const { calls, user } = draw();
    await rowOf(/1 Jul/);
    const asked = () => calls.filter(({ name }) => name === 'SetupStationDays').at(-1)?.variables;
    expect(asked()).toEqual({ id: 's1', from: '2026-07-01', until: '2026-07-31' });
    const choices = (): (string | null)[] => [...screen.getByLabelText('Month').children].map(({ textContent }) => textContent);
    expect(choices()).toEqual(['July 2026, to date', 'June 2026', 'May 2026']);
    await user.selectOptions(screen.getByLabelText('Month'), '2026-06');
    await rowOf(/1 Jul/);
    expect(choices()).toEqual(['July 2026', 'June 2026', 'May 2026']);
    expect(asked()).toEqual({ id: 's1', from: '2026-06-01', until: '2026-06-30' });
    expect(monthsBetween('2025-11-30', '2026-02-01')).toEqual(['2025-11', '2025-12', '2026-01', '2026-02']);
    expect(['2024-02', '2026-02', '2026-12'].map(lastDayOf)).toEqual(['2024-02-29', '2026-02-28', '2026-12-31']);
  });

  it('name the neighbour with its distance, or how near one would have to be', async () => {
    draw();
    // 11 km are 6.8 miles.
    expect(
      await screen.findByText(
        'Where a day is missing, Piedra Bench stands in, 7 mi away; else what is usual in the month. Its rain is taken too, as less sure than rain measured here; where the two have few days in common, only from a station within 9 mi.',
      ),
    ).toBeDefined();
    cleanup();
    draw({ neighbour: null }, { units: 'metric' });
    expect(
      await screen.findByText('No other station is known to be near enough to stand in for it: within 50 km and 300 m of height.'),
    ).toBeDefined();
  });

  it('are told in Spanish as in English', async () => {
    draw({}, { language: 'es' });
    expect(
      await screen.findByText('Humedad máxima y humedad mínima: lo mismo seis días o más, el sensor está trabado (no se usa).'),
    ).toBeDefined();
    expect(await screen.findByRole('heading', { name: 'Lo habitual en 1 de 12 meses' })).toBeDefined();
  });

  it('are not there for a station without weather, or that is gone', async () => {
    draw({ firstDay: null, lastDay: null });
    expect(await screen.findByText('Fennel Hollow East has no weather yet')).toBeDefined();
    cleanup();
    draw(null);
    expect(await screen.findByText('This station is not here any more')).toBeDefined();
  });
});
