import fc from 'fast-check';
import { expect, it } from 'vitest';
import { keptDetail } from '../../../apps/api/src/features/accounts/months/kept-detail.js';
import { packedColumns } from '../../../apps/api/src/features/accounts/months/packed-columns.js';
import { packed, unpacked } from '../../../apps/api/src/features/accounts/months/packed-value.js';
import { inColumns, plainProperty } from '../../support/worlds/in-columns.js';

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

it('gives back any JSON value to the last bit', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(unpacked(packed(value))).toEqual(asJson(value));
    }),
    { numRuns: 2000 },
  );
  fc.assert(
    fc.property(fc.double(), (number) => {
      expect(unpacked(packed([number]))).toEqual(asJson([number]));
    }),
  );
});

it('writes keys and ids of many alike once', () => {
  const lines = Array.from({ length: 20 }, (_, at) => ({
    zoneId: `00000008-0000-4000-8000-0000000000${String(10 + at)}`,
    meterId: '00000005-0000-4000-8000-000000000001',
    litres: 1000 / (3 + at),
    reason: null,
    programs: ['A'],
  }));
  const bytes = packed({ lines });
  // A line: its keys by place, an id of 16 bytes, one by place, a number of 8 bytes, nothing, a list with a text by place.
  expect(bytes.length).toBeLessThan(150 + 20 * 40);
  expect(unpacked(bytes)).toEqual({ lines });
});

it('leaves out what is undefined, as JSON does, and reads JSON text', () => {
  const value = { a: undefined, b: [1, { c: 'ü' }], d: 2 ** 40, e: -1 };
  expect(unpacked(packed(value))).toEqual(asJson(value));
  expect(unpacked(Buffer.from(JSON.stringify(value)))).toEqual(asJson(value));
});

it('has room for what is larger than the first room', () => {
  const value = { text: 'x'.repeat(300_000), numbers: Array.from({ length: 20_000 }, (_, at) => at / 7) };
  expect(unpacked(packed(value))).toEqual(value);
});

it('an account in columns is read as it was computed, and needs less room', () => {
  const beside = { pricePerLitre: 0.002, etoMm: null, rainMm: 12.5 };
  fc.assert(
    fc.property(plainProperty, (input) => {
      const both = inColumns(input);
      if (!both) return;
      const bytes = packedColumns(both.columns, beside);
      expect(keptDetail(bytes)).toEqual({ account: both.account, ...beside });
      expect(bytes.length).toBeLessThan(packed({ account: both.account, ...beside }).length);
    }),
    { numRuns: 100 },
  );
});
