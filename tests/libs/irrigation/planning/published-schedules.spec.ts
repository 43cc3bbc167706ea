// Schedules that others have worked out, planned from the same figures.
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { describe, expect, it } from 'vitest';
import { aController, intakeInInches, noRule, zoneInInches } from './a-controller.js';

const minutesOf = (plan: ReturnType<typeof planController>) =>
  plan.full.programs.flatMap(({ stations }) => stations.map(({ minutes }) => minutes));

describe('published schedules', () => {
  // A regional water programme of Texas: 0.20 in a day at 0.50 in/h are 24 min a day, 168 a week, 56 on each of three allowed days.
  it('Texas: 56 minutes on each of three allowed days', () => {
    const plan = planController(
      aController([zoneInInches(1, 0.2, 0.5)], {
        rules: [{ ...noRule, daysPerWeek: 3 }],
        weights: { thirst: 3, waste: 1, keyPress: 0, watering: 0 },
      }),
    );
    const [program] = plan.full.programs;
    const days = program?.days.kind === 'weekdays' ? program.days.weekdays.length : 0;
    expect((minutesOf(plan)[0] as number) * days).toBe(168);
    const three = planController(aController([zoneInInches(1, 0.2, 0.5, { storageDays: 3 })], { rules: [{ ...noRule, daysPerWeek: 3 }] }));
    expect(minutesOf(three)).toEqual([56]);
  });

  // Utah state guide: 0.5 in take 20 min of spray or 40 min of impact rotor (1.5 and 0.75 in/h implied).
  it('Utah: half an inch is 20 minutes of spray, 40 of impact rotor', () => {
    const zones = [zoneInInches(1, 0.5 / 7, 1.5), zoneInInches(2, 0.5 / 7, 0.75)];
    const plan = planController(aController(zones, { rules: [{ ...noRule, daysPerWeek: 1 }] }));
    expect(minutesOf(plan)).toEqual([20, 40]);
  });

  // Metric drip example (Cajamar, quoted by an extension page): 2.3 L/m2 a day from two emitters of 3 L/h per m2 run 23 min a day.
  it('metric drip: 23 minutes a day', () => {
    const zone = { ...zoneInInches(1, 1, 1), needLitresPerDay: 2.3, flowLPerMin: 6 / 60, storageDays: 1 };
    const plan = planController(aController([zone]));
    expect(minutesOf(plan)).toEqual([23]);
    expect(plan.full.programs[0]?.days).toMatchObject({ weekdays: ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] });
  });

  // UC IPM, UC Guide to Healthy Lawns, zone 2, cool-season grass, 1 in/h sprinklers: minutes a week, January to December, in about three
  // irrigations. At 1 in/h a minute is 1/60 in, so the minutes are the depth; what is checked is how they are spread and rounded.
  it('UC lawns: the minutes of every month in three irrigations, each to the next whole minute', () => {
    const printed = [13, 21, 34, 46, 67, 84, 88, 80, 63, 38, 17, 8];
    printed.forEach((minutes, month) => {
      const zone = zoneInInches(1, minutes / 60 / 7, 1, { storageDays: 3 });
      const plan = planController(
        aController([zone], { month: `2026-${String(month + 1).padStart(2, '0')}`, rules: [{ ...noRule, daysPerWeek: 3 }] }),
      );
      expect(plan.full.programs[0]?.days).toMatchObject({ weekdays: { length: 3 } });
      // Thirst costs three times what waste costs, so a third of a minute too little is rounded up too.
      expect(minutesOf(plan)).toEqual([Math.ceil(minutes / 3)]);
    });
  });

  // Irrigation Association (2005) cycle-and-soak formula: ASA 0.20 in, PR 1.6 in/h, IR 0.10 in/h allow 8.0 min; the soak is 60 ASA / IR = 120.
  it('cycle and soak: 8 minutes on clay, and two hours to soak', () => {
    const clay = intakeInInches(1.6, 0.1, 0.2);
    const plan = planController(aController([zoneInInches(1, (16 / 60) * 1.6, 1.6, { intake: clay, storageDays: 1 })]));
    expect(plan.full.programs[0]?.stations).toEqual([{ station: 1, minutes: 16, cycles: 2, soakMinutes: 120 }]);
  });

  // Denver Water, recommended minutes for four kinds of heads, June and July. Neither depth nor rates are printed: what is checked is that July's
  // four figures, taken as rates for one depth, give June's four at one need of the plants. Shares of 0.958 to 0.967 round to all four; 0.9625 is
  // taken.
  it("Denver: June's minutes of four kinds of heads from July's, at one need for all", () => {
    const july = [18, 36, 45, 27];
    const scheduled = (share: number) =>
      minutesOf(
        planController(
          aController(
            july.map((minutes, at) => zoneInInches(at + 1, (0.5 * share) / 7, 30 / minutes, { storageDays: 7 })),
            { rules: [{ ...noRule, daysPerWeek: 1 }], weights: { thirst: 1, waste: 1, keyPress: 0, watering: 0 } },
          ),
        ),
      );
    expect(scheduled(1)).toEqual(july);
    expect(scheduled(0.9625)).toEqual([17, 35, 43, 26]);
  });
});
