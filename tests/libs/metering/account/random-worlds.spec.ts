import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountController, AccountInput, AccountZone } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import type { MonthAccount } from '@rillbook/metering/account/month-account.js';
import type { InputShare } from '@rillbook/metering/uncertainty/input-share.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { someProperty } from '../../../support/worlds/random-world.mjs';

const ROUNDING = 1e-9;
/** Instants are minutes since 1970: a run of some minutes is known to some 1e-9 min, and flows are up to 80 L/min. [L] */
const CLOCK_ROUNDING = 1e-5;

const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(CLOCK_ROUNDING + ROUNDING * Math.abs(expected));

/** The same account, but for the order of what it lists and for rounding. */
function expectSameAccount(one: unknown, other: unknown): void {
  if (typeof one === 'number' && typeof other === 'number') return near(one, other);
  if (one === null || typeof one !== 'object') return expect(one).toEqual(other);
  expect(Object.keys(one)).toEqual(Object.keys(other as object));
  for (const [key, value] of Object.entries(one)) expectSameAccount(value, (other as Record<string, unknown>)[key]);
}

const byText = <T>(list: readonly T[], text: (each: T) => string) => list.toSorted((a, b) => text(a).localeCompare(text(b)));

const inOrder = (account: MonthAccount) => ({
  ...account,
  zones: byText(account.zones, ({ zoneId }) => zoneId),
  notes: byText(account.notes, (note) => JSON.stringify(note)),
});

const withPauses = fc
  .tuple(someProperty, fc.array(fc.tuple(fc.integer({ min: 1, max: 26 }), fc.integer({ min: 1, max: 47 })), { maxLength: 3 }))
  .map(([input, pauses]): AccountInput => {
    const at = (day: number, hours: number) =>
      `${dateOfDayNumber(dayNumberOfDate('2026-06-01') + day + Math.floor(hours / 24))}T${String(hours % 24).padStart(2, '0')}:00`;
    return changed(input, (controller) => ({
      ...controller,
      facts: onePerMinute(controller),
      pauses: pauses.map(([day, hours]) => ({ from: at(day, 0), until: at(day, hours) })),
    }));
  });

// Of two found facts at one minute only one is kept.
const onePerMinute = ({ facts }: AccountController) => [...new Map(facts.map((fact) => [fact.effectiveAt, fact])).values()];

function changed(input: AccountInput, change: (controller: AccountController) => AccountController): AccountInput {
  return { ...input, controllers: input.controllers.map(change) };
}

const changedZones = (input: AccountInput, change: (zone: AccountZone) => Partial<AccountZone>): AccountInput => ({
  ...input,
  zones: input.zones.map((zone) => ({ ...zone, ...change(zone) })),
});

describe('what came in which order makes no difference', () => {
  it('days, zones, facts, programs, pauses and intervals in any order give the same account', () => {
    const shuffled = <T>(list: readonly T[], order: readonly number[]): T[] =>
      list
        .map((each, at) => [order[at % order.length] ?? 0, each] as const)
        .sort(([a], [b]) => a - b)
        .map(([, each]) => each);
    fc.assert(
      fc.property(withPauses, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 11, maxLength: 11 }), (input, order) => {
        const mixed: AccountInput = {
          ...changed(input, (controller) => ({
            ...controller,
            facts: shuffled(controller.facts, order).map((fact) => ({ ...fact, programs: shuffled(fact.programs, order) })),
            pauses: shuffled(controller.pauses, order),
          })),
          days: shuffled(input.days, order),
          zones: shuffled(input.zones, order),
          meters: input.meters.map((meter) => ({ ...meter, intervals: shuffled(meter.intervals, order) })),
        };
        expectSameAccount(sortedInputs(computeMonthAccount(mixed)), sortedInputs(computeMonthAccount(input)));
      }),
      { numRuns: 150 },
    );
  });

  function sortedInputs(account: MonthAccount): unknown {
    return JSON.parse(JSON.stringify(inOrder(account), (key, value: unknown) => (Array.isArray(value) ? inOrderOf(key, value) : value)));
  }

  // Ids in any order; which of two inputs with one share of a variance is named first, or named at all as the last, is rounding.
  function inOrderOf(key: string, list: readonly unknown[]): readonly unknown[] {
    if (key === 'inputs') return (list as readonly InputShare[]).map(({ varianceShare }) => varianceShare).toSorted((a, b) => b - a);
    return list.every((each) => typeof each === 'string') ? list.toSorted() : list;
  }
});

describe('need', () => {
  const needs = (input: AccountInput) => computeMonthAccount(input).zones.map(({ neededLitres }) => neededLitres);
  const each = (before: AccountInput, after: AccountInput, holds: (before: number, after: number) => void) => {
    const [first, second] = [needs(before), needs(after)];
    first.forEach((litres, at) => {
      if (litres !== null) holds(litres, second[at] ?? Number.NaN);
    });
  };

  it('is never more where water falls more evenly', () => {
    fc.assert(
      fc.property(someProperty, fc.double({ min: 0, max: 1, noNaN: true }), (input, better) => {
        const even = changedZones(input, ({ duLq }) => ({ duLq: duLq + better * (1 - duLq) }));
        each(input, even, (before, after) => expect(after).toBeLessThanOrEqual(before * (1 + ROUNDING)));
      }),
      { numRuns: 150 },
    );
  });

  it('is never more where more rain falls on any days', () => {
    const someRain = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true })), { minLength: 13, maxLength: 13 });
    fc.assert(
      fc.property(someProperty, someRain, (input, more) => {
        const wetter = { ...input, days: input.days.map((day, at) => ({ ...day, rainMm: (day.rainMm ?? 0) + (more[at % 13] ?? 0) })) };
        each(input, wetter, (before, after) => expect(after).toBeLessThanOrEqual(before + ROUNDING * Math.max(1, before)));
      }),
      { numRuns: 150 },
    );
  });

  it('grows with the area as the area does', () => {
    fc.assert(
      fc.property(someProperty, fc.double({ min: 0.1, max: 10, noNaN: true }), (input, times) => {
        const larger = changedZones(input, ({ areaM2 }) => ({ areaM2: areaM2 * times }));
        each(input, larger, (before, after) => near(after, before * times));
      }),
      { numRuns: 150 },
    );
  });
});

describe('programmed', () => {
  const programmed = (input: AccountInput) => computeMonthAccount(input).zones.map(({ programmedLitres }) => programmedLitres);
  const same = (one: AccountInput, other: AccountInput) => expectSameAccount(programmed(one), programmed(other));
  const whole = (input: AccountInput): AccountInput => ({ ...input, through: '2026-06-30' });

  it('is the same however a start is split into cycles, where no midnight or change cuts it', () => {
    const someCycles = fc.array(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 20 })), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(someProperty, someCycles, fc.constantFrom(null, 1, 5), (input, cycles, minuteStep) => {
        const split = (of: (at: number) => readonly [number, number]) =>
          changed(whole(input), (controller) => ({
            ...controller,
            traits: { ...controller.traits, minuteStep },
            facts: controller.facts
              .filter(({ state }) => state === 'on')
              .slice(0, 1)
              .map((fact) => ({
                ...fact,
                effectiveAt: '2026-01-01T00:00',
                programs: fact.programs.map((program, ofProgram) => ({
                  ...program,
                  starts: [120 + 300 * ofProgram],
                  stations: program.stations.map((run, at) => {
                    const [cyclesOfRun, soakMinutes] = of(3 * ofProgram + at);
                    return { ...run, minutes: run.minutes / 3, cycles: cyclesOfRun, soakMinutes };
                  }),
                })),
              })),
          }));
        same(
          split(() => [1, 0]),
          split((at) => cycles[at] ?? [1, 0]),
        );
      }),
      { numRuns: 150 },
    );
  });

  it('is the same where settings are recorded again as they stand', () => {
    fc.assert(
      fc.property(withPauses, fc.integer({ min: 1, max: 59 }), fc.constantFrom('found' as const, 'left' as const), (input, day, record) => {
        const effectiveAt = `${dateOfDayNumber(dayNumberOfDate('2026-05-01') + day)}T13:07`;
        const again = changed(input, (controller) => {
          const standing = controller.facts
            .filter((fact) => fact.effectiveAt <= effectiveAt)
            .toSorted((a, b) => a.effectiveAt.localeCompare(b.effectiveAt))
            .at(-1);
          return standing ? { ...controller, facts: [...controller.facts, { ...standing, effectiveAt, record }] } : controller;
        });
        expectSameAccount(computeMonthAccount(again), computeMonthAccount(input));
      }),
      { numRuns: 150 },
    );
  });
});
