import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { vapourPressureFromSpecificHumidity } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-specific-humidity.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';

// FAO-56 Example 20: Tdew 14.8 °C, ea 1.68 kPa.
it('gives back the dew point of the published vapour pressure', () => {
  expect(dewPointFromVapourPressure(kilopascals(1.68))).toBeCloseTo(14.8, 1);
});

it('is the way back from every dew point', () => {
  fc.assert(
    fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (dewPoint) => {
      expect(dewPointFromVapourPressure(vapourPressureFromDewPoint(celsius(dewPoint)))).toBeCloseTo(dewPoint, 9);
    }),
  );
});

it('refuses air without any vapour', () => {
  expect(() => dewPointFromVapourPressure(kilopascals(0))).toThrow('PRESSURE_OUT_OF_DOMAIN');
});

it('agrees with the definition of specific humidity at every elevation', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.04, noNaN: true }), fc.integer({ min: -100, max: 4000 }), (humidity, elevation) => {
      const pressure = atmosphericPressure(metres(elevation));
      const vapour = vapourPressureFromSpecificHumidity(humidity, pressure);
      expect((0.622 * vapour) / (pressure - 0.378 * vapour)).toBeCloseTo(humidity, 12);
    }),
  );
  expect(() => vapourPressureFromSpecificHumidity(2, kilopascals(101.3))).toThrow('HUMIDITY_OUT_OF_DOMAIN');
});
