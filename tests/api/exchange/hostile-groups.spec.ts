import { expect, it } from 'vitest';
import { outcome } from './imports-in-memory.js';

// Lines that are one thing stand or fall together; the rules are this product's import contract.

const SETTINGS = 'property,controller,effective_at,record,state,program,days,starts,adjust_percent,station,minutes\n';
const on = (rest: string): string => `Elm,A,2026-05-01T10:00,left,on,${rest}\n`;

const refused: readonly (readonly [string, Readonly<Record<string, string>>, readonly string[]])[] = [
  [
    'settings whose records differ',
    { 'settings.csv': `${SETTINGS}${on('P,daily,05:00,100,1,10')}Elm,A,2026-05-01T10:00,found,on,P,daily,05:00,100,2,10\n` },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:record SETTINGS_DISAGREE &2'],
  ],
  [
    'percents that differ where the controller has one',
    { 'settings.csv': SETTINGS + on('P,daily,05:00,100,1,10') + on('Q,daily,06:00,90,2,10') },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:adjust_percent SETTINGS_DISAGREE &2'],
  ],
  [
    'a program with two sets of days and starts',
    { 'settings.csv': SETTINGS + on('P,daily,05:00,,1,10') + on('P,odd,05:00 06:00,,2,10') },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:days SETTINGS_DISAGREE &2', 'settings.csv:3:starts SETTINGS_DISAGREE &2'],
  ],
  [
    'the same station twice in a program',
    { 'settings.csv': SETTINGS + on('P,daily,05:00,,1,10') + on('P,daily,05:00,,1,12') },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:station DUPLICATE_ROW &2'],
  ],
  [
    'a running program without minutes',
    { 'settings.csv': SETTINGS + on('P,daily,05:00,,1,10') + on('P,daily,05:00,,2,') },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:minutes MISSING_VALUE'],
  ],
  [
    'a running controller without program, days and starts',
    { 'settings.csv': SETTINGS + on(',,,,1,10') },
    ['settings.csv:2:program MISSING_VALUE', 'settings.csv:2:days MISSING_VALUE', 'settings.csv:2:starts MISSING_VALUE'],
  ],
  [
    'a controller that is off with a program',
    { 'settings.csv': `${SETTINGS}Elm,A,2026-05-01,left,off,P,,,100,,\n` },
    ['settings.csv:2:program SETTINGS_NOT_BLANK', 'settings.csv:2:adjust_percent SETTINGS_NOT_BLANK'],
  ],
  [
    'a controller that is off twice',
    { 'settings.csv': `${SETTINGS}Elm,A,2026-05-01,left,off,,,,,,\nElm,A,2026-05-01,left,off,,,,,,\n` },
    ['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:state STATE_HAS_ONE_LINE &2'],
  ],
  [
    'a station that the controller does not have',
    { 'settings.csv': SETTINGS + on('P,daily,05:00,,13,10') },
    ['settings.csv:2:station STATION_BEYOND_CONTROLLER'],
  ],
  [
    'tiers out of order',
    {
      'rates.csv':
        'water_supplier,effective_from,tier,up_to,unit,price\nTown Water,2026-01-01,1,30,CCF,3\nTown Water,2026-01-01,2,20,CCF,4\n',
    },
    ['rates.csv:2: GROUP_REJECTED &3', 'rates.csv:3:up_to TIERS_OUT_OF_ORDER &2'],
  ],
  [
    'a tier after one without end',
    {
      'rates.csv':
        'water_supplier,effective_from,tier,up_to,unit,price\nTown Water,2026-01-01,1,,CCF,3\nTown Water,2026-01-01,2,20,CCF,4\n',
    },
    ['rates.csv:2: GROUP_REJECTED &3', 'rates.csv:3:up_to TIERS_OUT_OF_ORDER &2'],
  ],
  [
    'tiers in two units',
    {
      'rates.csv':
        'water_supplier,effective_from,tier,up_to,unit,price\nTown Water,2026-01-01,1,30,CCF,3\nTown Water,2026-01-01,2,,gal,4\n',
    },
    ['rates.csv:2: GROUP_REJECTED &3', 'rates.csv:3:unit SETTINGS_DISAGREE &2'],
  ],
];

it.each(refused)('names what is wrong with %s', async (_, files, problems) => {
  expect((await outcome(files)).problems).toEqual(problems);
});

it('lets programs have percents of their own where the controller has them by program', async () => {
  const rows = 'Oak,A,2026-05-01,left,on,P,daily,05:00,100,1,10\nOak,A,2026-05-01,left,on,Q,daily,06:00,90,2,10\n';
  expect((await outcome({ 'settings.csv': SETTINGS + rows })).problems).toEqual([]);
});

it('brings the scattered lines of a settings fact together', async () => {
  const line = (controller: string, station: number): string => `Oak,${controller},2026-05-01,left,on,P,daily,05:00,,${station},10\n`;
  const found = await outcome({ 'settings.csv': SETTINGS + line('A', 1) + line('B', 1) + line('A', 2) + line('B', 2) });
  expect(found.problems).toEqual([]);
  expect(found.accepted.settings?.map((row) => row.line)).toEqual([2, 4, 3, 5]);
});
