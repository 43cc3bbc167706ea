import { cyclesOfRun, longestCycle } from '@rillbook/irrigation/planning/demand/cycles-of-run.js';
import { keepsAll } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { adjustedMinutes } from '@rillbook/irrigation/settings/adjusted-minutes.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aController, zoneInInches } from './a-controller.js';
import { inventedController } from '../../../support/planning/controllers.mjs';

const RUNS = 8;
const worlds = fc.integer({ min: 1, max: 1e6 }).map((seed) => inventedController(seed, { mostZones: 6, mostPrograms: 2 }));

/** Timers that hold little, with percents of the months, and records that say more than they hold. */
const ODD_RUNS = 12;
const oddWorlds = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    month: fc.constantFrom('2026-02', '2026-07', '2026-10'),
    programs: fc.constantFrom(1, 2, null),
  })
  .map(({ seed, month, programs }) => {
    const world = inventedController(seed, { mostZones: 4, mostPrograms: 3, oddLimits: true });
    return { ...world, month, traits: { ...world.traits, programs: programs ?? world.traits.programs } };
  });

describe('every plan', () => {
  it('keeps what odd timers hold, whatever their records say', () => {
    fc.assert(
      fc.property(oddWorlds, (input) => {
        const plan = planController(input);
        expect(plan.refused).toBeNull();
        expect(plan.full.judgement.limits).toEqual([]);
        expect(keepsAll(plan.full.judgement)).toBe(true);
        if (plan.leastChange) expect(keepsAll(plan.leastChange.judgement)).toBe(true);
        const { startsPerProgram, maxMinutes, maxAdjustPercent, stations } = input.traits;
        for (const program of plan.full.programs) {
          expect(program.starts.length).toBeLessThanOrEqual(startsPerProgram ?? 99);
          expect(program.adjustPercent).toBeLessThanOrEqual(maxAdjustPercent ?? 999);
          for (const run of program.stations) {
            expect(run.minutes).toBeLessThanOrEqual(maxMinutes ?? 1440);
            expect(run.station).toBeLessThanOrEqual(stations ?? 99);
          }
        }
      }),
      { numRuns: ODD_RUNS },
    );
  });

  it('keeps every rule and every limit, lets nothing run off, and is never worse than what is set', () => {
    fc.assert(
      fc.property(worlds, (input) => {
        const plan = planController(input);
        expect(keepsAll(plan.full.judgement)).toBe(true);
        if (plan.leastChange) expect(keepsAll(plan.leastChange.judgement)).toBe(true);
        if (plan.present && keepsAll(plan.present)) expect(plan.full.judgement.cost).toBeLessThanOrEqual(plan.present.cost + 1e-6);
        if (plan.leastChange) expect(plan.full.judgement.cost).toBeLessThanOrEqual(plan.leastChange.judgement.cost + 1e-6);
      }),
      { numRuns: RUNS },
    );
  });

  it('comes to an end for a timer without a start, whose longest run nobody knows', () => {
    const base = aController([zoneInInches(1, 0.16, 0.47)]);
    const { full } = planController({ ...base, traits: { ...base.traits, startsPerProgram: 0, maxMinutes: null } });
    expect(full.programs).toEqual([]);
  });

  it('counts the longest run by minutes entered, where the month has a percent of its own', () => {
    const base = aController([{ ...zoneInInches(1, 0.16, 0.47), storageDays: 3 }]);
    const traits = { ...base.traits, programs: 1, startsPerProgram: 3, maxMinutes: 10, minuteStep: 0.5, cycleSoak: false };
    const { full, refused } = planController({ ...base, traits: { ...traits, monthlyAdjustPercent: new Array<number>(12).fill(30) } });
    expect(refused).toBeNull();
    expect(full.judgement.limits).toEqual([]);
    expect(full.programs[0]?.stations[0]?.minutes).toBeGreaterThan(9);
    expect(full.programs[0]?.stations[0]?.minutes).toBeLessThanOrEqual(10);
  });

  it('carries nothing on that records have above what the timer holds', () => {
    const base = aController([zoneInInches(1, 0.01, 0.47), zoneInInches(2, 0.4, 0.47)]);
    const program = (name: string, station: number, minutes: number) => ({
      name,
      days: { kind: 'daily' as const },
      starts: [60 * station],
      adjustPercent: 100,
      stations: [{ station, minutes, cycles: 1, soakMinutes: 0 }],
    });
    const present = [program('A', 1, 2), program('B', 2, 130), program('C', 2, 20)];
    const { full, refused } = planController({ ...base, present, traits: { ...base.traits, maxMinutes: 60, programs: 2 } });
    expect(refused).toBeNull();
    expect(full.judgement.limits).toEqual([]);
    expect(full.programs.find(({ name }) => name === 'B')?.stations).toMatchObject([
      { station: 2, minutes: expect.closeTo(51, -1) as number },
    ]);
    expect(full.programs.length).toBeLessThanOrEqual(2);
  });

  it('sets no cycle longer than the soil takes, and no soak shorter than it needs', () => {
    fc.assert(
      fc.property(worlds, (input) => {
        const step = input.traits.minuteStep ?? 1;
        for (const { stations, adjustPercent } of planController(input).full.programs) {
          for (const run of stations) {
            const intake = input.zones.find(({ station }) => station === run.station)?.intake ?? null;
            const minutes = adjustedMinutes(run.minutes, adjustPercent, step);
            const longest = Math.ceil(minutes / run.cycles / step - 1e-9) * step;
            expect(longest).toBeLessThanOrEqual(longestCycle(intake, step) + 1e-9);
          }
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('meets the need to the resolution of the timer wherever nothing is in the way', () => {
    fc.assert(
      fc.property(worlds, (world) => {
        // Whole days, one zone to a program, hours and rules that leave room: then every need is possible.
        const zones = world.zones
          .slice(0, 3)
          .map((zone) => ({ ...zone, intake: null, fillMinutes: 0, flowLPerMin: Math.max(zone.flowLPerMin, zone.needLitresPerDay / 40) }));
        const input = {
          ...world,
          zones,
          rules: [],
          present: null,
          flowLimitLPerMin: null,
          window: { from: 0, until: 1440 },
          traits: { ...world.traits, programs: 3, cycleSoak: true },
        };
        const { full } = planController(input);
        for (const zone of full.judgement.zones) {
          const program = full.programs.find(({ stations }) => stations.some(({ station }) => station === zone.station));
          expect(program).toBeDefined();
          const flow = zones.find(({ station }) => station === zone.station)?.flowLPerMin as number;
          const waterings = zone.usedLitres / flow / (program?.stations.find(({ station }) => station === zone.station)?.minutes as number);
          const resolution = (world.traits.minuteStep ?? 1) * flow * waterings;
          expect(Math.abs(zone.usedLitres - zone.neededLitres)).toBeLessThanOrEqual(resolution + 1e-6);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('divides runs into the fewest cycles that the soil takes', () => {
    fc.assert(
      fc.property(worlds, fc.integer({ min: 1, max: 60 }), ({ zones, traits }, minutes) => {
        const step = traits.minuteStep ?? 1;
        for (const { intake } of zones) {
          const most = longestCycle(intake, step);
          if (most === 0) continue;
          const { cycles, longest } = cyclesOfRun(intake, minutes, step);
          expect(longest).toBeLessThanOrEqual(most + 1e-9);
          if (cycles > 1) expect(minutes / (cycles - 1)).toBeGreaterThan(most - 1e-9);
        }
      }),
    );
  });
});
