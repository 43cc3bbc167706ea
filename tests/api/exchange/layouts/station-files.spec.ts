import { describe, expect, it } from 'vitest';
import { known } from '../imports-in-memory.js';
import { codedHourly, CODED_DAILY, DAYMET, flagged, FLAGGED_CELLS, GHCN, GRIDMET, laidOut, PRISM, S1 } from './built-files.js';

const near = (value: number): unknown => expect.closeTo(value, 6);
const days = async (text: string, meaning = S1) => (await laidOut({ 'download.bin': text }, meaning)).values.weather ?? [];

describe('daily values under network codes', () => {
  it('are °F, langleys, mph and inches, and what has no record is missing', async () => {
    const outcome = await laidOut({ 'any.name': CODED_DAILY });
    expect(outcome.problems).toEqual([]);
    expect(outcome.values.weather).toEqual([
      // 30.2 °F is -1 °C; a langley is 0.041868 MJ/m2, a mile per hour 0.44704 m/s, an inch 25.4 mm.
      {
        station: 'S1',
        day: '2023-02-27',
        tmaxC: near(10),
        tminC: near(-1),
        dewPointC: near(-2),
        windMPerS: near(2.01168),
        windHeightM: 3,
        solarMjPerM2: near(12.5604),
        rainMm: 0,
        givenEtoMm: near(2.032),
        rhMaxPercent: null,
        rhMinPercent: null,
      },
      expect.objectContaining({
        day: '2023-02-28',
        tmaxC: near(15),
        tminC: null,
        solarMjPerM2: null,
        rainMm: near(2.54),
        givenEtoMm: null,
      }),
      expect.objectContaining({ day: '2023-03-01', tmaxC: near(20), tminC: near(5), dewPointC: near(2) }),
    ]);
    expect(outcome.accepted.weather?.map(({ line }) => line)).toEqual([2, 3, 4]);
  });
});

describe('hourly values under network codes', () => {
  it('make days of hours named by their end: 00 ends the day before', async () => {
    const [first, second, ...others] = await days(codedHourly(2, (hour, day) => `${40 + hour + day},35.6,${hour},${hour < 12 ? 1 : 2}`));
    expect(others).toEqual([]);
    // 40 and 63 °F; 11.5 mph; 36 langleys.
    expect(first).toMatchObject({ day: '2023-06-01', tminC: near(40 / 9), tmaxC: near(155 / 9), dewPointC: near(2), rainMm: null });
    expect(first).toMatchObject({ windMPerS: near(11.5 * 0.44704), solarMjPerM2: near(36 * 0.041868), windHeightM: 3 });
    expect(second).toMatchObject({ day: '2023-06-02', tminC: near(5), tmaxC: near(160 / 9) });
  });

  it('leave a value missing with fewer than 22 hours of it, and bridge the sun of one or two, which is told', async () => {
    const outcome = await laidOut({
      f: codedHourly(1, (hour) => `50,${hour < 3 ? 'NO RECORD' : '40'},${hour < 2 ? '' : '10'},${hour < 2 ? -999 : 5}`),
    });
    expect(outcome.values.weather).toMatchObject([{ dewPointC: null, windMPerS: near(4.4704), solarMjPerM2: near(24 * 5 * 0.041868) }]);
    expect(outcome.warnings).toEqual(['f:2:TP HOURS_TOO_FEW', 'f:2:SI HOURS_BRIDGED']);
  });

  it('keep the sun of a noon at which nobody looked: two hours of it are a quarter of the day', async () => {
    const sun = (hour: number): number => Math.max(0, 70 * Math.sin((Math.PI * (hour - 6)) / 12));
    const solar = async (isMissing: (hour: number) => boolean) =>
      (await days(codedHourly(1, (hour) => `50,40,10,${isMissing(hour) ? 'NO RECORD' : sun(hour)}`)))[0]?.solarMjPerM2 as number;
    const whole = await solar(() => false);
    const bridged = await solar((hour) => hour === 12 || hour === 13);
    expect(bridged / whole).toBeGreaterThan(0.98);
    expect(bridged).toBeLessThan(whole);
  });

  it('leave out a day of which too little is known, so that it wipes nothing out', async () => {
    const outcome = await laidOut({ f: codedHourly(2).split('\n').slice(0, 30).join('\n') });
    expect(outcome.values.weather?.map(({ day }) => day)).toEqual(['2023-06-01']);
    expect(outcome.warnings).toEqual(['f:26: DAY_WITHOUT_VALUES']);
    expect(outcome.problems).toEqual([]);
  });
});

describe('hourly values with verdicts', () => {
  it('are metric, with the dew point of the mean vapour pressure and wind at 2 m', async () => {
    const expected = {
      station: 'S1',
      day: '2024-06-01',
      tmaxC: 20,
      tminC: 20,
      rhMaxPercent: 50,
      rhMinPercent: 50,
      // FAO-56, Eq. 11 backwards: e°(9.65 °C) = 1.2 kPa.
      dewPointC: expect.closeTo(9.65, 1),
      windMPerS: 2,
      windHeightM: 2,
      solarMjPerM2: near(43.2),
      rainMm: near(2.4),
      givenEtoMm: near(4.8),
    };
    expect(await days(flagged(), { station: 'S1' })).toEqual([expected]);
    // The layout's own height counts, whatever is stated of other files beside it.
    expect(await days(flagged(), S1)).toEqual([expected]);
    expect(
      await days(
        flagged(() => FLAGGED_CELLS, '77', false),
        { station: 'S1' },
      ),
    ).toEqual([expected]);
  });

  it.each(['I', 'M', 'S', 'R', 'Y'])('count a value with the verdict %s as missing', async (verdict) => {
    const outcome = await laidOut({ f: flagged((at) => (at < 3 ? FLAGGED_CELLS.replace('20, ', `20,${verdict}`) : FLAGGED_CELLS)) });
    expect(outcome.values.weather).toMatchObject([{ tmaxC: null, tminC: null, windMPerS: 2 }]);
    expect(outcome.warnings).toEqual(['f:2:tair HOURS_TOO_FEW', 'f:2:tair HOURS_TOO_FEW']);
  });

  it('do not read what the network rejected, whatever number it is', async () => {
    const outcome = await laidOut({ f: flagged((at) => (at < 3 ? FLAGGED_CELLS.replace('20, ', '999,R') : FLAGGED_CELLS)) });
    expect(outcome.problems).toEqual([]);
    expect(outcome.values.weather).toMatchObject([{ tmaxC: null, tminC: null, windMPerS: 2 }]);
  });

  it('sum the rain of the hours that are known, and tell that it is not that of all', async () => {
    const outcome = await laidOut({
      f: flagged((at) => (at < 1 ? FLAGGED_CELLS.replace('0.1, ', '0.1,M').replace('0.2, ', '0.2,M') : FLAGGED_CELLS)),
    });
    expect(outcome.values.weather).toMatchObject([{ rainMm: near(2.3), givenEtoMm: near(4.8) }]);
    expect(outcome.warnings).toEqual(['f:2:ppt SUM_OF_FEWER_HOURS', 'f:2:eto HOURS_BRIDGED']);
  });

  it('keep a value with another verdict', async () => {
    expect(await days(flagged(() => FLAGGED_CELLS.replace('20, ', '20,H')))).toMatchObject([{ tmaxC: 20 }]);
  });

  it('fall back on the mean dew point where there is no vapour pressure', async () => {
    expect(await days(flagged(() => FLAGGED_CELLS.replace('1.2, ', '1.2,M')))).toMatchObject([{ dewPointC: 9 }]);
  });
});

describe('one cell of the Daymet grid', () => {
  it('gives radiation over the daylight, vapour pressure as dew point, and leap years without their last day', async () => {
    const outcome = await laidOut({ f: DAYMET });
    expect(outcome.problems).toEqual([]);
    const [july, leap, last] = outcome.values.weather ?? [];
    expect(july).toMatchObject({ day: '2023-07-01', tmaxC: 33.1, tminC: 15.2, solarMjPerM2: near(17.5), rainMm: 0, windMPerS: null });
    // e°(9.4 °C) = 1.18 kPa (FAO-56, Eq. 11).
    expect(july?.dewPointC).toBeCloseTo(9.4, 1);
    expect(leap).toMatchObject({ day: '2024-02-29', rainMm: 2.5 });
    expect(last?.day).toBe('2024-12-30');
  });
});

describe('a table of the gridMET grid', () => {
  it('is in kelvin and mm, its radiation a mean of the day, its wind at 10 m', async () => {
    const [first, second] = await days(GRIDMET, { station: 'S1' });
    expect(first).toMatchObject({
      day: '2024-06-01',
      tmaxC: near(30),
      tminC: near(15),
      rhMaxPercent: 80,
      rhMinPercent: 20,
      dewPointC: null,
    });
    expect(first).toMatchObject({ windMPerS: 3.5, windHeightM: 10, solarMjPerM2: near(25.92), rainMm: 0, givenEtoMm: 6.5 });
    expect(second).toMatchObject({ rainMm: null, windMPerS: 3 });
  });

  it('gives the dew point from specific humidity where it has no relative humidity and the elevation is known', async () => {
    const text = 'day,tmmx,tmmn,sph\n2024-06-01,303.15,288.15,8.0e-3\n';
    const organization = { ...known, stationElevationsM: new Map([['S1', 1800]]) };
    const told = await laidOut({ f: text }, S1, organization);
    // P = 81.8 kPa at 1800 m (FAO-56, Example 2); ea = 0.008 · 81.8 / (0.622 + 0.378 · 0.008) = 1.047 kPa; e°(7.62 °C) = 1.047 kPa.
    expect(told.values.weather?.[0]?.dewPointC).toBeCloseTo(7.62, 1);
    const untold = await laidOut({ f: text });
    expect(untold.values.weather).toMatchObject([{ dewPointC: null, tmaxC: near(30) }]);
    expect(untold.warnings).toEqual(['f:2:sph DEW_POINT_NEEDS_ELEVATION']);
  });
});

describe('a year of GHCN-Daily', () => {
  it('is in tenths, an element a line, and leaves out what failed a check', async () => {
    const outcome = await laidOut({ '2024.csv': GHCN }, { station: 'S1' });
    expect(outcome.values.weather).toMatchObject([
      { day: '2024-06-01', rainMm: near(2.5), tmaxC: near(28.9), tminC: null, windMPerS: null, windHeightM: null },
      { day: '2024-06-02', rainMm: 0, tmaxC: null },
    ]);
    expect(outcome.warnings).toEqual(['2024.csv:4:value VALUE_FAILED_CHECK']);
    expect(outcome.problems).toEqual([]);
  });

  it('does not read what failed a check, whatever number it is', async () => {
    const outcome = await laidOut({ f: GHCN.replace('TMIN,133', 'TMIN,9999') }, { station: 'S1' });
    expect([outcome.problems, outcome.warnings]).toEqual([[], ['f:4:value VALUE_FAILED_CHECK']]);
    expect(outcome.values.weather).toMatchObject([{ tmaxC: near(28.9), tminC: null }, {}]);
  });

  it('may name its columns, by either of their names', async () => {
    const plain = await days(GHCN);
    for (const heading of ['ID,DATE,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBSTIME', 'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME'])
      expect(await days(`${heading}\n${GHCN}`)).toEqual(plain);
    expect(plain).toHaveLength(2);
  });

  it('asks for the height of its wind only where it has wind', async () => {
    const windy = `${GHCN}USC00047821,20240601,AWND,31,,,7,\n`;
    expect((await laidOut({ f: windy }, { station: 'S1' })).problems).toEqual(['f:: WIND_HEIGHT_NOT_STATED']);
    expect(await days(windy)).toMatchObject([
      { windMPerS: near(3.1), windHeightM: 3 },
      { windMPerS: null, windHeightM: null },
    ]);
  });

  it('takes the lines of the station that is meant, among those of others', async () => {
    const others = GHCN + GHCN.replaceAll('USC00047821', 'USC00040000').replaceAll(',289,', ',311,');
    const organization = { ...known, stations: ['S1', 'usc00040000'] };
    const outcome = await laidOut({ f: others }, {}, organization);
    expect(outcome.values.weather?.[0]).toMatchObject({ station: 'usc00040000', tmaxC: near(31.1) });
    expect((await laidOut({ f: others })).problems).toEqual(['f:: FILE_OF_SEVERAL_STATIONS']);
  });
});

describe('a time series of the PRISM grid', () => {
  it('is read in the units of its heading, and tells when its days end', async () => {
    const outcome = await laidOut({ f: PRISM });
    expect(outcome.values.weather).toMatchObject([
      { day: '2024-06-01', tmaxC: near(30), tminC: near(15), rainMm: near(2.54) },
      { day: '2024-06-02', rainMm: null },
    ]);
    expect(outcome.warnings).toEqual(['f:: DAY_ENDS_AT_NOON_UTC']);
    const metric = PRISM.replace('(inches)', '(mm)')
      .replaceAll('(degrees F)', '(degrees C)')
      .replace('59.0,70.0,86.0', '15,20,30')
      .replace('60.0,71.0,87.0', '16,21,31');
    expect(await days(metric)).toMatchObject([{ tmaxC: 30, tminC: 15, rainMm: 0.1 }, {}]);
  });

  it('is refused by the line where it holds months', async () => {
    const outcome = await laidOut({ f: PRISM.replace('2024-06-01,0.10', '2024-06,0.10') });
    expect(outcome.problems).toEqual(['f:12:Date MONTH_NOT_DAY']);
  });
});
