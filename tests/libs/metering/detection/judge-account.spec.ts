import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { judgeAccount } from '@rillbook/metering/detection/account/judge-account.js';
import type { EarlierMonth } from '@rillbook/metering/detection/account/judge-input.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { someProperty } from '../../../support/worlds/random-world.mjs';
import { aController, aFact, aMeter, anInterval, aProgram, aProperty, aZone } from '../a-property.js';

const thresholds: Thresholds = { minConfidence: 0.8, minLitres: 1000, minMoney: 5 };
const price = 0.003;
const judge = (changes: Partial<AccountInput> = {}, of: Partial<Thresholds> = {}, history: readonly EarlierMonth[] = []) =>
  judgeAccount({
    account: computeMonthAccount(aProperty(changes)),
    history,
    thresholds: { ...thresholds, ...of },
    pricePerLitre: new Map([['m1', price]]),
  });
const running = (minutes: number) => [aController([aFact([aProgram({ 1: minutes })])])];
const metering = (litres: number) => [aMeter([anInterval('2026-06-01', '2026-07-01', litres)])];
const kinds = (found: ReturnType<typeof judge>) => found.map(({ kind }) => kind);
const earlier = (...ratios: readonly number[]): EarlierMonth[] =>
  ratios.map((ratio, index) => ({ month: `2026-0${index + 1}`, meterId: 'm1', meteredLitres: 10_000 * ratio, programmedLitres: 10_000 }));

describe('settings', () => {
  it('over-programmed names controller, program, zone, the change, water, money and confidence', () => {
    const [found, ...others] = judge({ controllers: running(60), meters: metering(36_000) });
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      kind: 'over-programmed',
      causeKey: 'over-programmed controller:c1',
      causeFamily: 'excess meter:m1',
      controllerId: 'c1',
      meterId: 'm1',
      zoneIds: ['z1'],
      fromDate: '2026-06-01',
      untilDate: '2026-06-30',
      litres: expect.closeTo(21_000, 6),
      money: expect.closeTo(63, 6),
      says: { code: 'over-programmed', details: { controllerId: 'c1', zoneIds: ['z1'], programs: ['A'], percentOfNow: 42 } },
    });
    expect(found?.confidence).toBeGreaterThan(0.99);
  });

  it('under-programmed has no money: it would cost some', () => {
    expect(judge({ controllers: running(10), meters: metering(6000) })).toMatchObject([
      { kind: 'under-programmed', litres: expect.closeTo(9000, 6), money: null, says: { details: { percentOfNow: 250 } } },
    ]);
  });

  it('both open where one zone drowns and another thirsts', () => {
    const zones = [aZone(), aZone({ id: 'z2', station: 2 })];
    const controllers = [aController([aFact([aProgram({ 1: 50, 2: 5 })])])];
    const found = judge({ zones, controllers, meters: metering(33_000) });
    expect(found.map(({ kind, zoneIds }) => [kind, zoneIds])).toEqual([
      ['over-programmed', ['z1']],
      ['under-programmed', ['z2']],
    ]);
  });
});

describe('a controller on two meters', () => {
  const zones = [aZone({ meterId: 'm1' }), aZone({ id: 'z2', station: 2, meterId: 'm2' })];
  const meters = [
    aMeter([anInterval('2026-06-01', '2026-07-01', 36_000)]),
    aMeter([anInterval('2026-06-01', '2026-07-01', 36_000)], { id: 'm2' }),
  ];

  it('is a cause of its own, without the price of either', () => {
    const controllers = [aController([aFact([aProgram({ 1: 60, 2: 60 })])])];
    const [found] = judge({ zones, controllers, meters }).filter(({ kind }) => kind === 'over-programmed');
    expect(found).toMatchObject({
      meterId: null,
      money: null,
      causeKey: 'over-programmed controller:c1',
      causeFamily: 'over-programmed controller:c1',
      litres: expect.closeTo(42_000, 6),
      zoneIds: ['z1', 'z2'],
    });
  });
});

describe('significant and material', () => {
  it.each([{ minLitres: 22_000 }, { minMoney: 64 }, { minConfidence: 1 }])('a finding must meet %o', (of) => {
    expect(kinds(judge({ controllers: running(60), meters: metering(36_000) }, of))).not.toContain('over-programmed');
  });

  it('is judged by litres alone where the price is not known', () => {
    const account = computeMonthAccount(aProperty({ controllers: running(60), meters: metering(36_000) }));
    const found = judgeAccount({ account, history: [], thresholds: { ...thresholds, minMoney: 1e9 }, pricePerLitre: new Map() });
    expect(found).toMatchObject([{ kind: 'over-programmed', money: null }]);
  });
});

describe('the meter', () => {
  it('overwatered opens only where programmed is absent, and says why', () => {
    const found = judge({ controllers: [aController([])], meters: metering(40_000) });
    expect(found).toMatchObject([
      {
        kind: 'overwatered',
        causeKey: 'excess meter:m1',
        litres: expect.closeTo(25_000, 6),
        says: { details: { because: 'settings-not-known' } },
      },
    ]);
  });

  it('becomes over-programmed or unexplained use of the same family when settings arrive', () => {
    const families = [running(60), running(25)].map((controllers) => judge({ controllers, meters: metering(36_000) }));
    expect(families.map((found) => found.map(({ kind, causeFamily }) => [kind, causeFamily]))).toEqual([
      [['over-programmed', 'excess meter:m1']],
      [['unexplained use', 'excess meter:m1']],
    ]);
  });

  it('is not overwatered twice where known zones already explain it', () => {
    const zones = [aZone(), aZone({ id: 'z2', station: 2, flowLPerMin: null })];
    const controllers = [aController([aFact([aProgram({ 1: 80, 2: 20 })])])];
    expect(kinds(judge({ zones, controllers, meters: metering(60_000) }))).toEqual(['over-programmed']);
  });

  it('is not explained by a controller of another meter', () => {
    const zones = [aZone({ meterId: 'm1' }), aZone({ id: 'z2', controllerId: 'c2', meterId: 'm2' })];
    const controllers = [...running(60), aController([], { id: 'c2' })];
    const found = judge({
      zones,
      controllers,
      meters: [...metering(36_000), aMeter([anInterval('2026-06-01', '2026-07-01', 25_000)], { id: 'm2' })],
    });
    expect(found.map(({ kind, meterId }) => [kind, meterId])).toEqual([
      ['over-programmed', 'm1'],
      ['overwatered', 'm2'],
    ]);
  });

  it('does not deliver where it passes well under what is programmed', () => {
    expect(judge({ controllers: running(25), meters: metering(6000) })).toMatchObject([
      {
        kind: 'not delivering',
        causeKey: 'excess meter:m1',
        litres: expect.closeTo(9000, 6),
        money: null,
        says: { details: { ratio: expect.closeTo(0.4, 6) } },
      },
    ]);
  });

  it('passes water that no program asked for: unexplained, without a ratio, at the price of water', () => {
    expect(judge({ controllers: [aController([aFact([])])], meters: metering(6000), zones: [aZone({ plantFactor: 0 })] })).toMatchObject([
      {
        kind: 'unexplained use',
        litres: expect.closeTo(6000, 6),
        money: expect.closeTo(18, 6),
        zoneIds: ['z1'],
        says: { details: { ratio: null } },
      },
    ]);
  });

  it.each([
    [0.69, ['not delivering']],
    [0.71, []],
  ])('passing %f of what is programmed is %j', (share, found) => {
    expect(kinds(judge({ controllers: running(25), meters: metering(15_000 * share) }))).toEqual(found);
  });

  it('a ratio that has always been off asks for a flow test; one that becomes so is unexplained use', () => {
    const now = { controllers: running(25), meters: metering(20_000) };
    expect(judge(now, {}, earlier(1.33, 1.34, 1.32, 1.35))).toMatchObject([
      { kind: 'flow to be tested', causeKey: 'excess meter:m1', money: null, says: { details: { usualRatio: expect.closeTo(1.335, 6) } } },
    ]);
    expect(judge(now, {}, earlier(1.01, 0.99, 1.0, 1.02))).toMatchObject([
      { kind: 'unexplained use', says: { details: { usualRatio: expect.closeTo(1.005, 6) } } },
    ]);
    expect(kinds(judge(now, {}, earlier(1.33, 1.34)))).toEqual(['unexplained use']);
    expect(kinds(judge(now, {}, earlier(0.6, 1.3, 2.1, 1.2)))).toEqual(['unexplained use']);
  });
});

describe('over allowance', () => {
  const tight = { allowance: { from: 'ordinance' as const, etaf: 0.3, specialLandscapeAreaM2: 0 } };

  it('opens where the landscape itself needs more than is allowed, projected to the month end', () => {
    const found = judge({
      ...tight,
      controllers: running(25),
      meters: [aMeter([anInterval('2026-06-01', '2026-06-16', 7500)])],
      through: '2026-06-15',
    });
    expect(found).toMatchObject([
      { kind: 'over allowance', untilDate: '2026-06-15', says: { details: { daysCovered: 15, daysInMonth: 30 } } },
    ]);
    expect(found[0]?.says.details['projectedLitres']).toBeCloseTo(2 * (found[0]?.litres ?? 0), 6);
  });

  it('opens where nothing but the meter is known', () => {
    const allowance = { from: 'contract' as const, litresPerMonth: new Array<number>(12).fill(10_000) };
    expect(kinds(judge({ allowance, zones: [], controllers: [], meters: metering(40_000) }))).toEqual(['over allowance']);
  });

  describe('of two meters', () => {
    const contract = { from: 'contract' as const, litresPerMonth: new Array<number>(12).fill(10_000) };
    const passing = (litres: number, id = 'm1') => aMeter([anInterval('2026-06-01', '2026-07-01', litres)], { id });
    const over = (second: number, prices: readonly (readonly [string, number | null])[]) =>
      judgeAccount({
        account: computeMonthAccount(
          aProperty({ allowance: contract, zones: [], controllers: [], meters: [passing(30_000), passing(second, 'm2')] }),
        ),
        history: [],
        thresholds,
        pricePerLitre: new Map(prices),
      })[0];

    it('costs what each litre cost at its own meter, and is no one meter’s', () => {
      const found = over(10_000, [
        ['m1', 0.003],
        ['m2', 0.006],
      ]);
      // (30,000 at 0.003 and 10,000 at 0.006) are 0.00375 a litre, of 30,000 L too much.
      expect(found).toMatchObject({
        kind: 'over allowance',
        meterId: null,
        litres: expect.closeTo(30_000, 6),
        money: expect.closeTo(112.5, 6),
        says: { details: { allowedLitres: 10_000, meteredLitres: 40_000, landscapeGapLitres: null } },
      });
    });

    it('has no price where a meter that passed water has none; one that passed nothing needs none', () => {
      expect(over(10_000, [['m1', 0.003]])).toMatchObject({ litres: expect.closeTo(30_000, 6), money: null });
      expect(over(0, [['m1', 0.003]])).toMatchObject({ litres: expect.closeTo(20_000, 6), money: expect.closeTo(60, 6) });
    });
  });

  it('of one meter is that meter’s', () => {
    const allowance = { from: 'contract' as const, litresPerMonth: new Array<number>(12).fill(10_000) };
    expect(judge({ allowance, zones: [], controllers: [], meters: metering(40_000) })).toMatchObject([
      { meterId: 'm1', fromDate: '2026-06-01' },
    ]);
  });

  it('stays a line of the account where another finding explains the excess', () => {
    expect(kinds(judge({ ...tight, controllers: running(60), meters: metering(36_000) }))).toEqual(['over-programmed']);
    expect(kinds(judge({ ...tight, controllers: running(25), meters: metering(40_000) }))).toEqual(['unexplained use']);
  });
});

describe('any account', () => {
  it('opens one finding for a cause, each worth a look', () => {
    fc.assert(
      fc.property(someProperty, (input) => {
        const found = judgeAccount({
          account: computeMonthAccount(input),
          history: [],
          thresholds,
          pricePerLitre: new Map([['m1', price]]),
        });
        expect(new Set(found.map(({ causeKey }) => causeKey)).size).toBe(found.length);
        for (const { kind, confidence, litres, money } of found.filter(({ kind: each }) => each !== 'doubtful reading')) {
          expect(confidence, kind).toBeGreaterThanOrEqual(thresholds.minConfidence);
          expect(litres ?? 0, kind).toBeGreaterThanOrEqual(thresholds.minLitres);
          if (money !== null) expect(money, kind).toBeGreaterThanOrEqual(thresholds.minMoney);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('finds nothing in a month that is as it should be, nor before its first day', () => {
    expect(
      judge({ controllers: running(25), meters: metering(15_000), allowance: { from: 'ordinance', etaf: 1, specialLandscapeAreaM2: 0 } }),
    ).toEqual([]);
    expect(judge({ through: null })).toEqual([]);
  });
});
