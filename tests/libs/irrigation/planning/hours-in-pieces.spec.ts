import { cyclesOfRun, longestCycle, shortestSoak, soakAfter } from '@rillbook/irrigation/planning/demand/cycles-of-run.js';
import { runOffMinutes } from '@rillbook/irrigation/planning/demand/standing-water.js';
import { keepsAll } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import { placeStarts, type UnplacedProgram } from '@rillbook/irrigation/planning/layout/place-starts.js';
import { startLength } from '@rillbook/irrigation/planning/layout/start-length.kernel.js';
import { openHours } from '@rillbook/irrigation/planning/layout/water-window.js';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { layOutStart } from '@rillbook/irrigation/settings/replay/lay-out-start.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aController, intakeInInches, noRule, zoneInInches } from './a-controller.js';

const NIGHT = { from: 1200, until: 360 };
const tueFri = { ...noRule, allowedDays: { kind: 'weekdays' as const, weekdays: ['Tue' as const, 'Fri' as const] } };
const zones = [1, 2, 3, 4, 5, 6].map((station) => zoneInInches(station, 0.08, 0.19, { storageDays: 6 }));

describe('hours in pieces', () => {
  it('are a date before and after its night where rules count days, else one night', () => {
    expect(openHours(NIGHT, [tueFri], zones).pieces).toEqual([
      { after: 0, minutes: 360 },
      { after: 1200, minutes: 240 },
    ]);
    expect(openHours(NIGHT, [], zones)).toMatchObject({ from: 1200, minutes: 600, pieces: [{ after: 0, minutes: 600 }] });
    const noon = { ...noRule, blockedFrom: 540, blockedUntil: 1080 };
    expect(openHours({ from: 300, until: 1200 }, [noon], zones)).toMatchObject({
      from: 300,
      minutes: 360,
      pieces: [
        { after: 0, minutes: 240 },
        { after: 780, minutes: 120 },
      ],
    });
  });

  it('water an allowed date in both: need that the hours after midnight alone do not hold is met, and the rule is kept', () => {
    // 25 minutes a day are 88 on each of two days: 530 for six zones, of 360 after midnight and 240 before the next.
    const input = aController(zones, { rules: [tueFri], window: NIGHT });
    const { full } = planController(input);
    expect(keepsAll(full.judgement)).toBe(true);
    const starts = full.programs.flatMap((program) => program.starts);
    expect(starts.some((start) => start < 360)).toBe(true);
    expect(starts.some((start) => start >= 1200)).toBe(true);
    for (const { days } of full.programs) expect(days).toMatchObject({ kind: 'weekdays' });
    const morning = planController({ ...input, window: { from: 0, until: 360 } });
    expect(full.judgement.unmetLitres).toBeLessThan(morning.full.judgement.unmetLitres / 3);
  });

  it('let one program of a timer water in both, with starts of its own for each', () => {
    const one = aController(zones, { rules: [tueFri], window: NIGHT });
    const { full } = planController({ ...one, traits: { ...one.traits, programs: 1 } });
    expect(keepsAll(full.judgement)).toBe(true);
    expect(full.programs).toHaveLength(1);
    const starts = full.programs[0]?.starts ?? [];
    expect(Math.min(...starts)).toBeLessThan(360);
    expect(Math.max(...starts)).toBeGreaterThanOrEqual(1200);
  });

  it('take starts over the gap, each program within one piece, and say by how much one is too long', () => {
    const hours = openHours(NIGHT, [tueFri], zones);
    const program = (length: number, more: Partial<UnplacedProgram> = {}): UnplacedProgram => ({
      ...{ mask: 0b10010, isDaily: false, length, starts: 1, apart: 0, flowLPerMin: 10 },
      ...more,
    });
    const alone = { runsAtOnce: 1, flowLimitLPerMin: null };
    expect(placeStarts([program(300), program(230)], hours, alone)).toEqual({ starts: [[0], [1200]], dayLater: [false, false], excess: 0 });
    expect(placeStarts([program(200, { starts: 2 })], hours, alone)).toMatchObject({ starts: [[0, 1200]], excess: 0 });
    expect(placeStarts([program(365)], hours, alone).excess).toBe(5);
  });

  it("place a night's program after midnight with its days one later, and keep a neighbouring date's free", () => {
    const hours = openHours(NIGHT, [], zones);
    const alone = { runsAtOnce: 1, flowLimitLPerMin: null };
    const monday = { isDaily: false, starts: 1, apart: 0, flowLPerMin: 10, mask: 1 };
    const placed = placeStarts(
      [
        { ...monday, length: 300 },
        { ...monday, length: 300 },
      ],
      hours,
      alone,
    );
    expect(placed).toEqual({ starts: [[1200], [60]], dayLater: [false, true], excess: 0 });
    // Tuesday's own starts, several on one date, keep out of what Monday's night takes of Tuesday.
    const tuesday = { ...monday, mask: 2, starts: 2, length: 100 };
    expect(placeStarts([{ ...monday, length: 540 }, tuesday], hours, alone)).toMatchObject({ starts: [[1200], [1200, 1300]] });
  });
});

const runs = fc.record({
  rate: fc.double({ min: 0.3, max: 3, noNaN: true }),
  intake: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
  accumulation: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  minutes: fc.integer({ min: 1, max: 120 }),
  more: fc.integer({ min: 0, max: 6 }),
});

describe('soaks', () => {
  // Judged by the same picture of standing water that judges every plan.
  it('as short as they can be let nothing run off, a minute less does, and none is longer than a whole soak', () => {
    fc.assert(
      fc.property(runs, ({ rate, intake, accumulation, minutes, more }) => {
        const zone = intakeInInches(rate, intake, accumulation);
        fc.pre(longestCycle(zone, 1) > 0);
        const longest = Math.ceil(minutes / (cyclesOfRun(zone, minutes, 1).cycles + more));
        const cycles = Math.ceil(minutes / longest);
        const soak = shortestSoak(zone, minutes, { cycles, longest });
        const ranOff = (pause: number) => {
          const each = Array.from({ length: cycles }, (_, at) => ({
            begin: at * (longest + pause),
            end: at * (longest + pause) + Math.min(longest, minutes - at * longest),
          }));
          return runOffMinutes(each, zone);
        };
        expect(ranOff(soak)).toBeLessThan(1e-6);
        expect(soak).toBeLessThanOrEqual(soakAfter(zone, longest));
        if (soak > 0) expect(ranOff(soak - 1)).toBeGreaterThan(0);
      }),
    );
  });

  it('fill each other in a start that takes as long as laying it out says', () => {
    const station = fc.record({
      minutes: fc.integer({ min: 1, max: 60 }),
      cycles: fc.integer({ min: 1, max: 6 }),
      soakMinutes: fc.nat(90),
    });
    fc.assert(
      fc.property(fc.array(station, { minLength: 1, maxLength: 8 }), fc.constantFrom(0.5, 1, 5), (stations, step) => {
        const whole = stations.map((run, at) => ({ ...run, station: at + 1, minutes: Math.ceil(run.minutes / step) * step }));
        const length = startLength(
          whole.map(({ minutes }) => minutes),
          whole.map(({ cycles }) => cycles),
          whole.map(({ soakMinutes }) => soakMinutes),
          step,
          new Float64Array(whole.length),
        );
        const laidOut = layOutStart(whole, 100, { minuteStep: step, maxMinutes: null });
        expect(length).toBeCloseTo(Math.max(...laidOut.map(({ end }) => end)), 9);
      }),
    );
  });
});
