import { cyclesOfRun, longestCycle } from '@rillbook/irrigation/planning/demand/cycles-of-run.js';
import { keepsAll } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { adjustedMinutes } from '@rillbook/irrigation/settings/adjusted-minutes.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedController } from '../../../support/planning/controllers.mjs';

const RUNS = 8;
const worlds = fc.integer({ min: 1, max: 1e6 }).map((seed) => inventedController(seed, { mostZones: 6, mostPrograms: 2 }));

describe('every plan', () => {
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
