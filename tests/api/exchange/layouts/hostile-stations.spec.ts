import { describe, expect, it } from 'vitest';
import { known, outcome } from '../imports-in-memory.js';
import { codedHourly, CODED_DAILY, DAYMET, flagged, GHCN, GRIDMET, laidOut, PRISM, S1 } from './built-files.js';

const problems = async (text: string | Buffer, meaning = S1) => (await laidOut({ f: text }, meaning)).problems;
const daily = (row: string): string => `YEAR,MONTH,DAY,MN,MX,SR,YM,UA\n${row}\n`;

describe('a line that cannot be right is refused by file, line and column', () => {
  it.each([
    ['a day that is not there', daily('2023,02,29,30,50,300,28,4'), ['f:2:DAY NOT_A_DATE']],
    ['a month that is not there', daily('2023,13,01,30,50,300,28,4'), ['f:2:DAY NOT_A_DATE']],
    ['a year before any network', daily('0023,01,01,30,50,300,28,4'), ['f:2:DAY OUT_OF_RANGE']],
    ['a date of words', daily('this,is,it,30,50,300,28,4'), ['f:2:DAY NOT_A_DATE']],
    ['not a number', daily('2023,01,01,NaN,50,300,28,4'), ['f:2:MN NOT_A_NUMBER']],
    ['infinity', daily('2023,01,01,-Infinity,50,300,28,4'), ['f:2:MN NOT_A_NUMBER']],
    ['a number beyond all numbers', daily('2023,01,01,30,1e308,300,28,4'), ['f:2:MX OUT_OF_RANGE']],
    ['colder than there is', daily('2023,01,01,-998,50,300,28,4'), ['f:2:MN OUT_OF_RANGE']],
    ['a decimal comma', daily('2023,01,01,30,"50,5",300,28,4'), ['f:2:MX DECIMAL_COMMA']],
    ['a thousands separator', daily('2023,01,01,30,50,"1,300",28,4'), ['f:2:SR THOUSANDS_SEPARATOR']],
    ['W/m2 where langleys are meant', daily('2023,01,01,30,50,9000,28,4'), ['f:2:SR OUT_OF_RANGE']],
    ['wind backwards', daily('2023,01,01,30,50,300,28,-4'), ['f:2:UA OUT_OF_RANGE']],
    ['a lowest above the highest', daily('2023,01,01,60,50,300,28,4'), ['f:2:MN MIN_ABOVE_MAX']],
    ['more cells than columns', daily('2023,01,01,30,50,300,28,4,9'), ['f:2: TOO_MANY_CELLS']],
    ['the same day twice', daily('2023,01,01,30,50,300,28,4\n2023,01,01,31,50,300,28,4'), ['f:3:date DUPLICATE_ROW &2']],
    ['a line cut off', daily('2023,01'), ['f:2:DAY NOT_A_DATE']],
    ['day 366 of a year of 365', DAYMET.replace('2024,365', '2024,366'), ['f:9:yday OUT_OF_RANGE']],
    ['half a day', DAYMET.replace('2024,365', '2024,36.5'), ['f:9:yday NOT_A_DATE']],
    ['daylight longer than a day', DAYMET.replace('50000.00', '90000'), ['f:7:dayl (s) OUT_OF_RANGE']],
    ['more sun than reaches the air', DAYMET.replace('350.00', '1400'), ['f:7:srad (W/m^2) OUT_OF_RANGE']],
    ['air drier than any', DAYMET.replace('1180.00', '0.00'), ['f:7:vp (Pa) OUT_OF_RANGE']],
    ['Celsius among kelvins', GRIDMET.replace('303.15', '30.0'), ['f:2:tmmx (K) OUT_OF_RANGE']],
    ['an hour beyond the day', codedHourly(1).replace('06,01,05,', '06,01,25,'), ['f:6:HOUR NOT_AN_HOUR', 'f:2: ok']],
    ['an element that is none', `${GHCN}USC00047821,20240603,??,1,,,7,\n`, ['f:7:element NOT_ONE_OF']],
    ['an element twice', `${GHCN}USC00047821,20240602,PRCP,1,,,7,\n`, ['f:7: DUPLICATE_ROW &3']],
  ])('%s', async (_, text, expected) => {
    expect(await problems(text)).toEqual(expected.filter((one) => !one.endsWith(' ok')));
  });

  it('and the good days beside it are accepted', async () => {
    const { values, rejected } = await laidOut({ f: CODED_DAILY.replace('68.00', 'warm') });
    expect(values.weather?.map(({ day }) => day)).toEqual(['2023-02-27', '2023-02-28']);
    expect(rejected['weather']).toMatchObject([
      { line: 4, cells: ['2023', '03', '01', '41.00', 'warm', '400.00', '35.60', '10.00', '0.00', '0.20', '0.15'] },
    ]);
  });
});

describe('an hour', () => {
  it('that comes twice refuses its day, whose lines are all given back', async () => {
    const lines = codedHourly(2).split('\n');
    const outcome = await laidOut({ f: [...lines.slice(0, 5), lines[4], ...lines.slice(5)].join('\n') });
    expect(outcome.problems).toEqual(['f:6: DUPLICATE_ROW &5']);
    expect(outcome.values.weather?.map(({ day }) => day)).toEqual(['2023-06-02']);
    const given = outcome.rejected['weather'] ?? [];
    expect(given).toHaveLength(25);
    expect(given.filter(({ isBeside }) => !isBeside)).toHaveLength(1);
    expect(given.map(({ problems }) => problems.length).reduce((sum, one) => sum + one)).toBe(1);
  });

  it('of a day that was finished before makes a second such day, which is refused', async () => {
    const text = codedHourly(2);
    const late = `${text}${text.split('\n').slice(1, 25).join('\n')}\n`;
    expect(await problems(late)).toEqual(['f:50:date DUPLICATE_ROW &2']);
  });

  it('that comes thousands of times refuses its day and what follows, in no more than a line each', async () => {
    const many = `${codedHourly(1)}${'2023,06,02,01,50,40,10,5\n'.repeat(5000)}`;
    const outcome = await laidOut({ f: many });
    expect(outcome.values.weather?.map(({ day }) => day)).toEqual(['2023-06-01']);
    const given = outcome.rejected['weather'] ?? [];
    expect(given).toHaveLength(5000);
    expect(given.filter(({ isBeside }) => !isBeside)).toHaveLength(50);
  });

  it('that cannot be read refuses its day, by its own line', async () => {
    expect(await problems(codedHourly(1, (hour) => (hour === 7 ? 'hot,40,10,5' : '50,40,10,5')))).toEqual(['f:9:OB NOT_A_NUMBER']);
  });
});

describe('a file as a whole', () => {
  it('is refused where it breaks off in the middle, and no row of it is read', async () => {
    const cut = Buffer.concat([Buffer.from(CODED_DAILY), Buffer.from('2023,03,02,41,6\xff8,400\n', 'latin1')]);
    expect(await laidOut({ f: cut })).toMatchObject({ problems: ['f:5: NOT_UTF8'], values: {} });
  });

  it.each([
    ['a line of more than a megabyte', `${CODED_DAILY}2023,03,02,${'9'.repeat(1_100_000)}\n`, 'f:5: LINE_TOO_LONG'],
    ['a line of very many cells', `${CODED_DAILY}${'1,'.repeat(500)}\n`, 'f:5: TOO_MANY_COLUMNS'],
    ['a quotation mark that is never closed', `${CODED_DAILY}"2023,03,02\n`, 'f:5: QUOTE_NOT_CLOSED'],
    ['a NUL', `${CODED_DAILY}2023,03,02,\0,,\n`, 'f:5: NUL_BYTE'],
    ['another unit', DAYMET.replace('tmax (deg c)', 'tmax (furlongs)'), 'f:6:tmax (furlongs) UNIT_NOT_KNOWN'],
    ['no unit where one must be', PRISM.replace('ppt (inches)', 'ppt'), 'f:11:ppt UNIT_NOT_KNOWN'],
    ['a column twice', CODED_DAILY.replace('PP', 'MX'), 'f:1:MX DUPLICATE_COLUMN'],
    ['no line but the heading', 'YEAR,MONTH,DAY,MN,MX,SR,YM,UA\n', 'f:1: FILE_WITHOUT_DAYS'],
  ])('is refused with %s', async (_, text, expected) => {
    expect(await laidOut({ f: text })).toMatchObject({ problems: [expected], values: {} });
  });

  it('without any line is none of a station', async () => {
    expect(await problems('')).toEqual(['f:: UNKNOWN_FILE', '*:: NOTHING_TO_IMPORT']);
  });

  it('of missing values only is refused, and each day named', async () => {
    expect(await problems(daily('2023,01,01,NO RECORD,NO RECORD,,,-999'))).toEqual(['f:1: FILE_WITHOUT_DAYS', 'f:2: DAY_WITHOUT_VALUES']);
  });

  it('is known by its content where its name is that of another file', async () => {
    const { values, problems: found } = await laidOut({ 'weather.csv': CODED_DAILY });
    expect([values.weather?.length, found]).toEqual([3, []]);
  });

  it('may have its columns in any order and case, semicolons, a byte-order mark and CRLF', async () => {
    const text = `\ufeff${CODED_DAILY.replaceAll(',', ';').replaceAll('\n', '\r\n').replace('YEAR;MONTH', 'year;Month')}`;
    const plain = await laidOut({ f: CODED_DAILY });
    expect((await laidOut({ f: text })).values.weather).toEqual(plain.values.weather);
  });

  it('gives the same however its bytes arrive', async () => {
    const whole = await laidOut({ f: flagged() });
    for (const piece of [1, 7, 61]) expect((await laidOut({ f: flagged() }, S1, known, piece)).values).toEqual(whole.values);
  });

  it('tells of a column that it does not know', async () => {
    expect((await laidOut({ f: CODED_DAILY.replace('PP', 'ZZ') })).warnings).toEqual(['f:1:ZZ UNKNOWN_COLUMN']);
  });
});

describe('whose file it is', () => {
  it.each([
    ['nobody said, and there are several stations', {}, { ...known, stations: ['S1', 'S2'] }, ['f:: STATION_NOT_CHOSEN']],
    ['there is no station', {}, { ...known, stations: [] }, ['f:: NO_STATION_YET']],
    ['a station is named that is not there', { station: 'S9' }, known, ['f::station UNKNOWN_NAME']],
    ['nobody said how high the wind is measured', { station: 'S1' }, known, ['f:: WIND_HEIGHT_NOT_STATED']],
    ['there is only one station', { windHeightM: 2 }, known, []],
  ])('%s', async (_, meaning, organization, expected) => {
    expect((await laidOut({ f: CODED_DAILY }, meaning, organization)).problems).toEqual(expected);
  });

  it('may be a station of the same import', async () => {
    const { values } = await laidOut(
      { f: CODED_DAILY, 'stations.csv': 'station,latitude,longitude\nNew,36,-115\n' },
      { station: 'New', windHeightM: 2 },
    );
    expect(values.weather?.map(({ station }) => station)).toEqual(['New', 'New', 'New']);
  });
});

it('reads two layouts side by side, and tells of a day that stands in both', async () => {
  const other = CODED_DAILY.replace('2023,03,01', '2023,07,01');
  const { values, warnings, problems: found } = await laidOut({ 'a.csv': other, 'b.csv': DAYMET });
  expect(found).toEqual([]);
  expect(values.weather).toHaveLength(6);
  expect(warnings).toEqual(['b.csv:7:date DAY_IN_TWO_FILES']);
});

it('leaves a file of the import alone whose columns only resemble a layout', async () => {
  const text = 'station,date,tmax_f,tmin_f,rain_in\nS1,2024-06-01,80,60,0\n';
  expect((await outcome({ 'weather.csv': text })).values.weather).toMatchObject([{ rainMm: 0 }]);
});
