import type { Program, SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountInput, AccountMeter, AccountZone } from '@rillbook/metering/account/account-input.js';
import fc from 'fast-check';
import { aController, aFact, aMeter, anInterval, aZone, weather } from '../a-property.js';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const someZone = (index: number): fc.Arbitrary<AccountZone> =>
  fc
    .record({
      meterId: fc.constantFrom(null, 'm1', 'none'),
      handWatered: fc.boolean(),
      areaM2: number(5, 2000),
      plantFactor: number(0.1, 1),
      density: number(0.5, 1.3),
      shade: number(0.5, 1),
      rawMm: number(5, 60),
      duLq: number(0.4, 1),
      leachingFraction: number(0, 0.2),
      flowLPerMin: number(1, 80),
      flowSource: fc.constantFrom('measured' as const, 'nameplate' as const, 'derived' as const),
    })
    .map((each) =>
      aZone({ ...each, id: `z${index}`, station: index, handWatered: each.handWatered && index === 3, handLitresPerWeek: 100 }),
    );

const someProgram = (name: string): fc.Arbitrary<Program> =>
  fc.record({
    name: fc.constant(name),
    days: fc.constantFrom<Program['days']>({ kind: 'daily' }, { kind: 'odd' }, { kind: 'weekdays', weekdays: ['Mon', 'Thu'] }),
    starts: fc.array(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 2 }),
    adjustPercent: fc.integer({ min: 10, max: 200 }),
    stations: fc.tuple(...[1, 2, 3].map((station) => number(0, 30).map((minutes) => ({ station, minutes, cycles: 2, soakMinutes: 15 })))),
  });

const someFact: fc.Arbitrary<SettingsFact> = fc
  .record({
    day: fc.integer({ min: 1, max: 28 }),
    month: fc.constantFrom('05', '06'),
    state: fc.constantFrom('on' as const, 'on' as const, 'off' as const),
    programs: fc.tuple(someProgram('A'), someProgram('B')),
  })
  .map(({ day, month, state, programs }) =>
    aFact(state === 'on' ? programs : [], { state, effectiveAt: `2026-${month}-${String(day).padStart(2, '0')}T09:00`, record: 'found' }),
  );

const someMeter: fc.Arbitrary<AccountMeter> = fc
  .record({
    litres: number(0, 5e5),
    more: number(0, 5e5),
    indoorLitresPerDay: number(0, 3000),
    kind: fc.constantFrom('irrigation' as const, 'mixed' as const),
  })
  .map(({ litres, more, ...each }) =>
    aMeter(
      [anInterval('2026-05-20', '2026-06-14', litres, { source: 'bills', sdLitres: 40 }), anInterval('2026-06-14', '2026-07-09', more)],
      each,
    ),
  );

/** A property with up to three zones, one meter, two or more dated facts and random weather: all four volumes exist, unless a zone lacks them. */
export const someProperty: fc.Arbitrary<AccountInput> = fc
  .record({
    zones: fc.tuple(someZone(1), someZone(2), someZone(3)),
    count: fc.integer({ min: 1, max: 3 }),
    facts: fc.array(someFact, { minLength: 0, maxLength: 4 }),
    meter: someMeter,
    eto: fc.array(number(0, 9), { minLength: 30, maxLength: 30 }),
    rain: fc.array(fc.oneof(fc.constant(0), fc.constant(0), number(0, 40)), { minLength: 30, maxLength: 30 }),
    through: fc.integer({ min: 1, max: 30 }),
    etaf: number(0.3, 1),
    specialLandscapeAreaM2: number(0, 500),
  })
  .map(({ zones, count, facts, meter, eto, rain, through, etaf, specialLandscapeAreaM2 }) => ({
    month: '2026-06',
    through: `2026-06-${String(through).padStart(2, '0')}`,
    days: weather('2026-03-03', '2026-06-30', (date) => ({
      etoMm: eto[Number(date.slice(8)) % 30] ?? 0,
      rainMm: rain[Number(date.slice(8)) % 30] ?? 0,
    })),
    zones: zones.slice(0, count),
    controllers: [aController([aFact([], { state: 'off' }), ...facts])],
    meters: [meter],
    allowance: { from: 'ordinance' as const, etaf, specialLandscapeAreaM2 },
    clockChanges: [],
  }));
