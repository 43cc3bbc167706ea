import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Formats, formatsFor } from '../../../apps/web/src/i18n/formats.js';
import { typedNumber } from '../../../apps/web/src/i18n/numbers.js';
import { quantities, type QuantityKind } from '../../../apps/web/src/i18n/quantities.js';

const place = { language: 'en', units: 'us', currency: 'USD', timeZone: 'America/Denver' } as const;
const us = formatsFor(place);
const metric = formatsFor({ ...place, units: 'metric' });
const spanish = formatsFor({ ...place, language: 'es' });

// 1 US gallon = 3.785 411 784 L, 1 ft² = 0.092 903 04 m², 1 in = 25.4 mm, exactly (NIST Handbook 44, Appendix C; from memory).
describe('quantities', () => {
  it('are gallons, never thousands of them, in US units', () => {
    expect(us.volume(389_600 * 3.785411784)).toBe('389,600 gal');
    expect(us.volume(0)).toBe('0 gal');
  });

  it('are cubic metres in metric, and litres where that says more', () => {
    expect(metric.volume(1_474_796)).toBe('1,475 m³');
    expect(metric.volume(15_140)).toBe('15.1 m³');
    expect(metric.volume(820)).toBe('820 L');
  });

  it('keep one unit down a column', () => {
    const column = metric.volumeColumn(1_474_796);
    expect([column.unit, column.figure(820), column.figure(1_474_796), column.figure(null)]).toEqual(['m³', '1', '1,475', '–']);
  });

  it('carry their unit', () => {
    expect(us.quantity('area', 102_270 * 0.09290304)).toBe('102,270 sq ft');
    expect(us.quantity('depth', 25.4 * 0.62)).toBe('0.62 in');
    expect(us.quantity('flow', 2.1 * 3.785411784)).toBe('2.1 gpm');
    expect(metric.quantity('area', 9501)).toBe('9,501 m²');
    expect(metric.quantity('rate', 38.1)).toBe('38.1 mm/h');
    expect(spanish.quantity('area', 102_270 * 0.09290304)).toBe('102,270 pies²');
  });

  it('come back as they were stored when a person types what they read', () => {
    const kinds = Object.keys(quantities) as QuantityKind[];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.constantFrom('us', 'metric'),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (kind, units, stored) => {
          const shown = quantities[kind][units as 'us' | 'metric'];
          expect(shown.toSi(shown.fromSi(stored))).toBeCloseTo(stored, 4);
        },
      ),
    );
    expect(us.typed('area', '12,500')).toBeCloseTo(1161.288, 3);
    expect(us.typed('area', 'twelve')).toBeNull();
  });
});

describe('numbers', () => {
  it('are dashes where nothing is known, never zero', () => {
    const ways: ((formats: Formats) => string)[] = [
      (f) => f.number(null),
      (f) => f.volume(undefined),
      (f) => f.money(null),
      (f) => f.percent(Number.NaN),
      (f) => f.quantity('area', null),
      (f) => f.minutes(null),
      (f) => f.signed(null),
    ];
    for (const way of ways) expect(way(us)).toBe('–');
  });

  it('have a true minus, and none before zero', () => {
    expect(us.number(-24_300)).toBe('−24,300');
    expect(us.number(-0.2)).toBe('0');
    expect([us.signed(92_700), us.signed(-13_600), us.signed(0)]).toEqual(['+ 92,700', '− 13,600', '0']);
  });

  it('are money in the organization’s currency', () => {
    expect([us.money(853.7), us.price(0.00565, 5), us.money(-13.2)]).toEqual(['$854', '$0.00565', '−$13']);
    expect(spanish.money(1854)).toBe('$1,854');
  });

  it('are read as typed, and never guessed', () => {
    expect(['1,234.5', '1234.5', ' 7 ', '−3', '.5'].map(typedNumber)).toEqual([1234.5, 1234.5, 7, -3, 0.5]);
    expect(['', '1,23', '1.2.3', '12 gal', '1e5', 'NaN', ',', '-', '.', '1,2345'].map(typedNumber)).toEqual(
      Array.from({ length: 10 }, () => null),
    );
  });

  it('tell minutes as hours where there are any', () => {
    expect([us.minutes(32), us.minutes(80), us.minutes(120)]).toEqual(['32 min', '1 h 20 min', '2 h']);
  });
});

describe('dates', () => {
  it('are days of a calendar that no time zone moves', () => {
    for (const timeZone of ['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'UTC'])
      expect(formatsFor({ ...place, timeZone }).day('2026-09-28')).toBe('Mon 28 Sep');
    expect(us.dayOfYear('2026-07-01')).toBe('Wed 1 Jul 2026');
    expect(us.dayInWords('2026-09-24')).toBe('Thursday 24 September');
    expect(spanish.dayInWords('2026-09-24')).toBe('jueves 24 de septiembre');
    expect(spanish.month('2026-09')).toBe('septiembre de 2026');
    expect(spanish.days('2026-09-01', '2026-09-24')).toBe('1 al 24 de septiembre de 2026');
    expect(spanish.day('2026-09-24')).toBe('jue 24 sept');
    expect([us.month('2026-09'), us.monthShort('2026-09')]).toEqual(['September 2026', 'Sep']);
  });

  it('are spans without repeating what is the same', () => {
    expect(us.days('2026-09-01', '2026-09-24')).toBe('1 to 24 September 2026');
    expect(us.days('2026-08-28', '2026-09-02')).toBe('28 August to 2 September 2026');
    expect(us.days('2025-12-28', '2026-01-02')).toBe('28 December 2025 to 2 January 2026');
    expect(spanish.days('2026-09-01', '2026-09-24')).toBe('1 al 24 de septiembre de 2026');
  });

  it('are told on the clocks of the place, on both sides of a change of clocks', () => {
    expect(us.moment('2026-09-24T12:50:00Z')).toBe('Thu 24 Sep, 6:50 am');
    expect(us.time('2026-09-24T12:50:00Z', 'America/Los_Angeles')).toBe('5:50 am');
    expect(spanish.time('2026-09-24T12:50:00Z', 'America/Los_Angeles')).toBe('5:50 am');
    // Clocks in Denver go back on 1 November 2026 at 2:00 (Energy Policy Act of 2005, first Sunday of November).
    expect([us.time('2026-11-01T07:30:00Z'), us.time('2026-11-01T08:30:00Z')]).toEqual(['1:30 am', '1:30 am']);
    expect(us.moment('2026-09-24T04:00:00Z', 'America/Denver')).toBe('Wed 23 Sep, 10:00 pm');
  });
});
