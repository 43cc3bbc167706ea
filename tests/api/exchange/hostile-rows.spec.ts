import { expect, it } from 'vitest';
import { outcome } from './imports-in-memory.js';

// Rows against other rows, names, clocks; the rules are this product's import contract.

const ZONES = 'property,zone,controller,station,meter,area_sqft,method,precip_in_per_hr,flow_gpm\n';
const SETTINGS = 'property,controller,effective_at,record,state,program,days,starts,adjust_percent,station,minutes\n';
const on = (rest: string): string => `Elm,A,2026-05-01T10:00,left,on,${rest}\n`;

const refused: readonly (readonly [string, Readonly<Record<string, string>>, readonly string[]])[] = [
  ['a property that is not there', { 'zones.csv': `${ZONES}Ash,Beds,,,,100,drip,,\n` }, ['zones.csv:2:property UNKNOWN_NAME']],
  [
    'a property whose row was rejected',
    { 'properties.csv': 'property,client,latitude,longitude\nAsh,Elm HOA,99,0\n', 'zones.csv': `${ZONES}Ash,Beds,,,,100,drip,,\n` },
    ['properties.csv:2:latitude OUT_OF_RANGE', 'zones.csv:2:property NAME_REJECTED &2'],
  ],
  [
    'a client whose row was rejected',
    { 'clients.csv': 'client,language\nAsh HOA,fr\n', 'properties.csv': 'property,client\nAsh,Ash HOA\n' },
    ['clients.csv:2:language NOT_ONE_OF', 'properties.csv:2:client NAME_REJECTED &2'],
  ],
  [
    'a meter name in another case',
    { 'readings.csv': 'property,meter,read_at,register\nElm,m1,2026-05-01,1\n' },
    ['readings.csv:2:meter UNKNOWN_NAME'],
  ],
  [
    'a meter of another property',
    { 'readings.csv': 'property,meter,read_at,register\nElm,M2,2026-05-01,1\n' },
    ['readings.csv:2:meter UNKNOWN_NAME'],
  ],
  [
    'a meter name that two properties have',
    { 'readings.csv': 'meter,read_at,register\nM1,2026-05-01,1\n' },
    ['readings.csv:2:property AMBIGUOUS_NAME'],
  ],
  [
    'a controller name that two properties have',
    { 'pauses.csv': 'controller,paused_from\nA,2026-05-01\n' },
    ['pauses.csv:2:property AMBIGUOUS_NAME'],
  ],
  [
    'a meter that no property has',
    { 'bills.csv': 'meter,start,end,volume\nM7,2026-05-01,2026-06-01,1\n' },
    ['bills.csv:2:meter UNKNOWN_NAME'],
  ],
  [
    'a meter whose row was rejected',
    { 'meters.csv': 'meter,property,unit\nM7,Elm,buckets\n', 'bills.csv': 'meter,start,end,volume\nM7,2026-05-01,2026-06-01,1\n' },
    ['meters.csv:2:unit NOT_ONE_OF', 'bills.csv:2:meter NAME_REJECTED &2'],
  ],
  ['a weather station that is not there', { 'weather.csv': 'station,date\nS9,2026-05-01\n' }, ['weather.csv:2:station UNKNOWN_NAME']],
  ['a zone that is not there', { 'plantings.csv': 'property,zone,species\nElm,Roof,Salvia\n' }, ['plantings.csv:2:zone UNKNOWN_NAME']],
  [
    'the same meter twice in one property',
    { 'meters.csv': 'meter,property,unit\nM5,Elm,CCF\nM5,Oak,CCF\nM5,Elm,CCF\n' },
    ['meters.csv:4:meter DUPLICATE_ROW &2'],
  ],
  [
    'the same weather day twice',
    { 'weather.csv': 'station,date\nS1,2026-05-01\nS1,2026-05-01\n' },
    ['weather.csv:3:date DUPLICATE_ROW &2'],
  ],
  [
    'the same reading twice, with and without property',
    { 'readings.csv': 'property,meter,read_at,register\n,M2,2026-05-01,1\nOak,M2,2026-05-01T00:00,2\n' },
    ['readings.csv:3:read_at DUPLICATE_ROW &2'],
  ],
  [
    'the same reading twice by offset',
    { 'readings.csv': 'property,meter,read_at,register\nElm,M1,2026-05-01T00:00,1\nElm,M1,2026-05-01T07:00Z,2\n' },
    ['readings.csv:3:read_at DUPLICATE_ROW &2'],
  ],
  [
    'the same rule twice',
    { 'rules.csv': 'rule,water_supplier,effective_from\nR,Town Water,\nR,Town Water,2026-01-01\nR,Town Water,\n' },
    ['rules.csv:4:rule DUPLICATE_ROW &2'],
  ],
  [
    'a latitude without longitude',
    { 'properties.csv': 'property,client,latitude,longitude\nAsh,Elm HOA,38,\n' },
    ['properties.csv:2:longitude BOTH_OR_NEITHER'],
  ],
  ['a controller without station', { 'zones.csv': `${ZONES}Elm,Beds,A,,,100,drip,,\n` }, ['zones.csv:2:station BOTH_OR_NEITHER']],
  ['a station without controller', { 'zones.csv': `${ZONES}Elm,Beds,,3,,100,drip,,\n` }, ['zones.csv:2:controller BOTH_OR_NEITHER']],
  [
    'a station beyond the controller',
    { 'zones.csv': `${ZONES}Elm,Beds,A,13,,100,drip,,\n` },
    ['zones.csv:2:station STATION_BEYOND_CONTROLLER'],
  ],
  [
    'two zones on one station',
    { 'zones.csv': `${ZONES}Elm,Beds,A,3,,100,drip,,\nElm,Trees,A,3,,100,bubbler,,\n` },
    ['zones.csv:3:station STATION_TAKEN &2'],
  ],
  ['a zone with a meter that is not there', { 'zones.csv': `${ZONES}Elm,Beds,,,M2,100,drip,,\n` }, ['zones.csv:2:meter UNKNOWN_NAME']],
  [
    'a bill that ends on its first day',
    { 'bills.csv': 'property,meter,start,end,volume\nElm,M1,2026-05-01,2026-05-01,1\n' },
    ['bills.csv:2:end END_NOT_AFTER_START'],
  ],
  [
    'usage that ends before it starts',
    { 'usage.csv': 'property,meter,start,end,volume\nElm,M1,2026-05-01T02:00,2026-05-01T01:00,1\n' },
    ['usage.csv:2:end END_NOT_AFTER_START'],
  ],
  [
    'usage that overlaps',
    {
      'usage.csv':
        'property,meter,start,end,volume\nElm,M1,2026-05-01T01:00,2026-05-01T02:00,1\nElm,M1,2026-05-01T01:30,2026-05-01T02:30,1\nOak,M1,2026-05-01T01:30,2026-05-01T02:30,1\n',
    },
    ['usage.csv:3:start USAGE_OVERLAPS &2'],
  ],
  [
    'usage out of order that overlaps',
    {
      'usage.csv':
        'property,meter,start,end,volume\nElm,M1,2026-05-02,2026-05-03,1\nElm,M1,2026-05-01,2026-05-02,1\nElm,M1,2026-04-30,2026-05-01T00:01,1\n',
    },
    ['usage.csv:4:start USAGE_OVERLAPS &3'],
  ],
  [
    'usage that starts twice',
    { 'usage.csv': 'property,meter,start,end,volume\nElm,M1,2026-05-01,2026-05-02,1\nElm,M1,2026-05-01,2026-05-02,1\n' },
    ['usage.csv:3:start DUPLICATE_ROW &2'],
  ],
  [
    'a pause that ends before it begins',
    { 'pauses.csv': 'property,controller,paused_from,paused_until\nElm,A,2026-05-02,2026-05-01\n' },
    ['pauses.csv:2:paused_until END_NOT_AFTER_START'],
  ],
  [
    'a lowest temperature above the highest',
    { 'weather.csv': 'station,date,tmax_f,tmin_f,rhmax,rhmin\nS1,2026-05-01,60,80,20,40\n' },
    ['weather.csv:2:tmin_f MIN_ABOVE_MAX', 'weather.csv:2:rhmin MIN_ABOVE_MAX'],
  ],
  [
    'a rule that ends before it begins, with half its hours',
    {
      'rules.csv':
        'rule,water_supplier,effective_from,effective_until,blocked_from,blocked_until\nR,Town Water,2026-06-01,2026-05-01,10:00,\n',
    },
    ['rules.csv:2:blocked_until BOTH_OR_NEITHER', 'rules.csv:2:effective_until END_NOT_AFTER_START'],
  ],
  [
    'a time that does not exist',
    { 'readings.csv': 'property,meter,read_at,register\nElm,M1,2026-03-08T02:30,1\n' },
    ['readings.csv:2:read_at TIME_DOES_NOT_EXIST'],
  ],
  [
    'several bad cells in one row',
    { 'zones.csv': `${ZONES}Elm,,A,1.5,,1e5,fog,,\n` },
    [
      'zones.csv:2:zone MISSING_VALUE',
      'zones.csv:2:station NOT_WHOLE',
      'zones.csv:2:area_sqft NUMBER_NOT_IN_FULL',
      'zones.csv:2:method NOT_ONE_OF',
    ],
  ],
];

it.each(refused)('names what is wrong with %s', async (_, files, problems) => {
  expect((await outcome(files)).problems).toEqual(problems);
});

const warned: readonly (readonly [string, Readonly<Record<string, string>>, readonly string[]])[] = [
  // 0.5 in/h on 1,000 ft² is 5.19 gpm: 96.25 x gpm / ft² = in/h (common practice).
  [
    'a flow that precipitation rate and area contradict',
    { 'zones.csv': `${ZONES}Elm,Beds,A,1,,1000,spray,0.5,5.8\n` },
    ['zones.csv:2:flow_gpm FLOW_DISAGREES'],
  ],
  ['no flow that agrees within a tenth', { 'zones.csv': `${ZONES}Elm,Beds,A,1,,1000,spray,0.5,5.7\n` }, []],
  [
    'a client made by its property',
    { 'properties.csv': 'property,client\nAsh,Ash HOA\nFir,Ash HOA\n' },
    ['properties.csv:2:client CLIENT_CREATED'],
  ],
  [
    'a weather station without position',
    { 'properties.csv': 'property,client,weather_station\nAsh,Elm HOA,S7\n' },
    ['properties.csv:2:weather_station STATION_NOT_KNOWN'],
  ],
  [
    'a contract without its months',
    { 'properties.csv': 'property,client,allowance_from\nAsh,Elm HOA,contract\n' },
    ['properties.csv:2:allowance_gal_per_month CONTRACT_WITHOUT_MONTHS'],
  ],
  [
    'a water supplier that no property names',
    { 'rules.csv': 'rule,water_supplier\nR,Twon Water\n' },
    ['rules.csv:2:water_supplier SUPPLIER_CREATED'],
  ],
  [
    'more than the controller is recorded to hold',
    { 'settings.csv': SETTINGS + on('P,daily,01:00 02:00 03:00 04:00 05:00,201,1,120') },
    [
      'settings.csv:2:minutes BEYOND_CONTROLLER',
      'settings.csv:2:adjust_percent BEYOND_CONTROLLER',
      'settings.csv:2:starts BEYOND_CONTROLLER',
    ],
  ],
  [
    'bills that overlap',
    { 'bills.csv': 'property,meter,start,end,volume\nElm,M1,2026-05-01,2026-06-01,1\nElm,M1,2026-05-31,2026-07-01,1\n' },
    ['bills.csv:3:start BILLS_OVERLAP &2'],
  ],
  [
    'no bills that touch',
    { 'bills.csv': 'property,meter,start,end,end_included,volume\nElm,M1,2026-05-01,2026-05-31,yes,1\nElm,M1,2026-06-01,2026-07-01,,1\n' },
    [],
  ],
  [
    'a swap under one name',
    { 'meters.csv': 'meter,property,unit,installed_on,first_register,removed_on,last_register\nM9,Elm,CCF,2026-05-02,0,2026-05-01,4821\n' },
    ['meters.csv:2:removed_on SWAP_DATES'],
  ],
  [
    'registers without their dates',
    { 'meters.csv': 'meter,property,unit,first_register,last_register,installed_on,removed_on\nM9,Elm,CCF,0,4821,,\n' },
    ['meters.csv:2:last_register REGISTER_WITHOUT_DATE', 'meters.csv:2:first_register REGISTER_WITHOUT_DATE'],
  ],
];

it.each(warned)('warns of %s, and accepts the rows', async (_, files, warnings) => {
  const found = await outcome(files);
  expect(found.problems).toEqual([]);
  expect(found.warnings).toEqual(warnings);
});

it('finds things of the same import, and the property by a name that only one has', async () => {
  const found = await outcome({
    'readings.csv': 'meter,read_at,register\nNew,2026-05-01,1\nM2,2026-05-01,2\n',
    'meters.csv': 'meter,property,unit\nNew,Ash,gal\n',
    'properties.csv': 'property,client,time_zone\nAsh,Elm HOA,America/New_York\n',
  });
  expect(found.problems).toEqual([]);
  expect(found.values.readings?.map((row) => [row.property, row.readAt])).toEqual([
    ['Ash', Date.UTC(2026, 4, 1, 4)],
    ['Oak', Date.UTC(2026, 4, 1, 6)],
  ]);
});

it('keeps what is known of a controller and a property where a file has not the column', async () => {
  const found = await outcome({
    'properties.csv': 'property,client\nOak,Elm HOA\n',
    'controllers.csv': 'controller,property,stations\nA,Elm,24\n',
    'settings.csv': SETTINGS + on('P,daily,05:00,100,24,10') + on('Q,daily,06:00,90,2,10'),
    'readings.csv': 'meter,read_at,register\nM2,2026-05-01,1\n',
  });
  expect(found.problems).toEqual(['settings.csv:2: GROUP_REJECTED &3', 'settings.csv:3:adjust_percent SETTINGS_DISAGREE &2']);
  expect(found.values.readings?.[0]?.readAt).toBe(Date.UTC(2026, 4, 1, 6));
});

it('forgets the zones of one station when the file is read a second time', async () => {
  const files = { 'zones.csv': `${ZONES}Elm,Beds,A,3,,100,drip,,\n` };
  expect((await outcome(files)).problems).toEqual([]);
  expect((await outcome(files)).problems).toEqual([]);
});
