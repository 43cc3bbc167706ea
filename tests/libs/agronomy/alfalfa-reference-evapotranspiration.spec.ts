import { alfalfaReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/alfalfa-reference-evapotranspiration.js';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const station = { latitude: degrees(36), elevation: metres(100) };
const summer: WeatherDay = {
  dayOfYear: 200,
  tmax: celsius(33),
  tmin: celsius(17),
  rhmax: null,
  rhmin: null,
  dewPoint: celsius(13),
  wind: metresPerSecond(2),
  windHeight: metres(2),
  solar: megajoulesPerSquareMetreDay(26),
  rain: null,
  givenEto: null,
};
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('alfalfaReferenceEvapotranspiration', () => {
  it('assumes, refuses and doubts as the reference of grass does', () => {
    const holed = { ...summer, wind: null, solar: megajoulesPerSquareMetreDay(260) };
    const [tall, short] = [alfalfaReferenceEvapotranspiration(holed, station), referenceEvapotranspiration(holed, station)];
    const told = { assumed: ['wind', 'solar-radiation'], refused: ['solar'] };
    expect(tall).toMatchObject(told);
    expect(short).toMatchObject(told);
    expect('relativeSd' in tall && 'relativeSd' in short && tall.relativeSd === short.relativeSd).toBe(true);
  });

  it('is not known from temperatures alone, nor from a reference of grass that the source states', () => {
    const alone = { ...summer, dewPoint: null, wind: null, windHeight: null, solar: null };
    const answer = { etrMm: null, reason: 'temperatures-alone', refused: [] };
    expect(alfalfaReferenceEvapotranspiration(alone, station)).toEqual(answer);
    expect(alfalfaReferenceEvapotranspiration({ ...alone, givenEto: millimetres(6) }, station)).toEqual(answer);
  });

  it('is not known without temperatures, and says whether they were refused', () => {
    expect(alfalfaReferenceEvapotranspiration({ ...summer, tmin: null }, station)).toMatchObject({ reason: 'no-temperatures' });
    const swapped = { ...summer, tmax: summer.tmin, tmin: summer.tmax };
    expect(alfalfaReferenceEvapotranspiration(swapped, station)).toMatchObject({ etrMm: null, reason: 'temperatures-refused' });
  });

  it('exceeds the reference of grass in dry wind, and rises with solar radiation', () => {
    fc.assert(
      fc.property(within(1, 10), within(5, 28), within(0.1, 5), (wind, solar, more) => {
        const day = (value: number) => ({ ...summer, wind: metresPerSecond(wind), solar: megajoulesPerSquareMetreDay(value) });
        const etr = (value: number) => alfalfaReferenceEvapotranspiration(day(value), station).etrMm ?? Number.NaN;
        expect(etr(solar)).toBeGreaterThan(referenceEvapotranspiration(day(solar), station).etoMm ?? Number.NaN);
        expect(etr(solar + more)).toBeGreaterThan(etr(solar));
      }),
    );
  });

  it('is never negative: a day on which more dew forms than water leaves counts as 0', () => {
    const dewy = {
      ...summer,
      dayOfYear: 355,
      tmax: celsius(3),
      tmin: celsius(2.5),
      dewPoint: celsius(3),
      solar: megajoulesPerSquareMetreDay(0.5),
    };
    const north = { latitude: degrees(60), elevation: metres(10) };
    expect(alfalfaReferenceEvapotranspiration(dewy, north)).toMatchObject({ etrMm: 0 });
  });
});
