import * as angle from '@rillbook/units/angle.js';
import * as area from '@rillbook/units/area.js';
import * as depthRate from '@rillbook/units/depth-rate.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import * as flow from '@rillbook/units/flow.js';
import * as length from '@rillbook/units/length.js';
import * as pressure from '@rillbook/units/pressure.js';
import * as radiation from '@rillbook/units/radiation.js';
import * as speed from '@rillbook/units/speed.js';
import * as temperature from '@rillbook/units/temperature.js';
import * as volume from '@rillbook/units/volume.js';
import { expect, it } from 'vitest';

const { isVolumeUnit: _, volumeUnits: __, ...volumes } = volume;

const MODULES = {
  ANGLE_OUT_OF_DOMAIN: angle,
  AREA_OUT_OF_DOMAIN: area,
  DEPTH_RATE_OUT_OF_DOMAIN: depthRate,
  FLOW_OUT_OF_DOMAIN: flow,
  LENGTH_OUT_OF_DOMAIN: length,
  PRESSURE_OUT_OF_DOMAIN: pressure,
  RADIATION_OUT_OF_DOMAIN: radiation,
  SPEED_OUT_OF_DOMAIN: speed,
  TEMPERATURE_OUT_OF_DOMAIN: temperature,
  VOLUME_OUT_OF_DOMAIN: volumes,
};

const refusal = (deed: () => unknown): DomainError => {
  try {
    deed();
  } catch (problem) {
    if (problem instanceof DomainError) return problem;
    throw problem;
  }
  throw new Error('it was not refused');
};

const makers = Object.entries(MODULES).flatMap(([code, module]) =>
  Object.entries(module as unknown as Record<string, (value: number, unit: string) => unknown>).map(
    ([name, make]) => [name, code, make] as const,
  ),
);

it.each(makers)('%s refuses what is not a number by %s, with the value', (_name, code, make) => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
    const { code: said, details, message } = refusal(() => make(value, 'gal'));
    expect(said).toBe(code);
    expect(Object.keys(details)).toEqual(['value']);
    expect(message).toBe(`${code} {"value":null}`);
  }
});

it('a temperature may be absolute zero, and not below it', () => {
  expect(temperature.celsius(-273.15)).toBe(-273.15);
  expect(refusal(() => temperature.celsius(-273.16)).details).toEqual({ value: -273.16 });
});

it('a unit of volume that nobody knows is named', () => {
  expect(refusal(() => volume.litresFrom(1, 'barrel' as never)).details).toEqual({ unit: 'barrel' });
});

it('a refusal without details says none', () => {
  expect(new DomainError('SOMETHING').details).toEqual({});
});
