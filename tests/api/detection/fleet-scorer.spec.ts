// The scorer's rules on a fleet written by hand, and the generator's promise that a seed is a fleet. What is right for which fault is the
// scorer's own table; nothing here is a measurement of the product.
import { describe, expect, it } from 'vitest';
import { labelledFleet } from '../../bench/fleets/generate.mjs';
import { scoreFleet } from '../../bench/fleets/score.mjs';

type Row = readonly (string | number)[];
const csv = (...rows: readonly Row[]): string => rows.map((row) => `${row.join(',')}\n`).join('');

const READ_ON = ['2024-01-02', '2024-02-01', '2024-03-03', '2024-04-02', '2024-05-02', '2024-06-01', '2024-07-01', '2024-08-01'];
const MONTHLY = ['Leaky', 'Late', 'Quiet', 'Misread', 'Wrong flows', 'Unknown'];
const FED = 'Fed';
const HOUR_MS = 3_600_000;

function hours(from: string, days: number): Row[] {
  const text = (at: number): string => new Date(at).toISOString().slice(0, 16);
  return Array.from({ length: 24 * days }, (_, hour) => {
    const start = Date.parse(`${from}Z`) + hour * HOUR_MS;
    return [FED, 'M', text(start), text(start + HOUR_MS), 12, 'gal'];
  });
}

const files = {
  'properties.csv': csv(['property', 'client'], ...[...MONTHLY, FED].map((name) => [name, 'One'])),
  'meters.csv': csv(
    ['meter', 'property', 'kind', 'unit', 'multiplier', 'resolution', 'size_in'],
    ...[...MONTHLY, FED].map((name) => ['M', name, 'irrigation', 'gal', 1, 1, 1]),
  ),
  'settings.csv': csv(['property', 'controller', 'effective_at', 'state'], ['Unknown', 'A', '2024-01-01T09:00', 'unknown']),
  'readings.csv': csv(
    ['property', 'meter', 'read_at', 'register'],
    ...MONTHLY.flatMap((name) => READ_ON.map((day, at) => [name, 'M', `${day}T10:00`, 1000 * at])),
  ),
  'usage.csv': csv(['property', 'meter', 'start', 'end', 'volume', 'unit'], ...hours('2024-01-02T00:00', 212)),
};

const TRUTH_COLUMNS = ['property', 'meter', 'zone', 'controller', 'kind', 'starts_at', 'ends_at', 'share_of_usual_month', 'gpm', 'note'];
const FINDING_COLUMNS = [
  'property',
  'meter',
  'controller',
  'zone',
  'kind',
  'from',
  'until',
  'gallons',
  'money',
  'confidence',
  'state',
  'opened_at',
  'says',
]; // prettier-ignore

interface Opened {
  readonly property: string;
  readonly kind: string;
  readonly openedAt: string;
  readonly zone?: string;
  readonly until?: string;
  readonly confidence?: number;
}
const findings = (...opened: readonly Opened[]): string =>
  csv(
    FINDING_COLUMNS,
    ...opened.map(({ property, kind, openedAt, zone = '', until = openedAt.slice(0, 10), confidence = 0.99 }) => [
      ...[property, 'M', '', zone, kind, openedAt.slice(0, 10), until, 5000, '', confidence, 'open', `${openedAt}:00-08:00`, 'said'],
    ]),
  );
const leak = (property: string, starts: string, ends = '', share = 0.2): Row => [
  property,
  'M',
  '',
  '',
  'continuous leak',
  starts,
  ends,
  share,
  2.5,
  '',
]; // prettier-ignore
const score = (truth: readonly Row[], opened: readonly Opened[], gaps = '') =>
  scoreFleet({ files, truth: csv(TRUTH_COLUMNS, ...truth), findings: findings(...opened), gaps, history: true });

describe('recall', () => {
  it('is in time up to the second reading after the start on a monthly meter, and later no longer', () => {
    const truth = [leak('Leaky', '2024-03-10T12:00')];
    const second = score(truth, [{ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-05-02T10:00' }]);
    expect(second.unexplainedUse['monthly']).toMatchObject({ judged: 1, found: 1, inTime: 1 });
    expect(second.delays['monthly']).toMatchObject({ found: 1, medianReadings: 2 });
    const third = score(truth, [{ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-06-01T10:00' }]);
    expect(third.unexplainedUse['monthly']).toMatchObject({ judged: 1, found: 1, inTime: 0, recallInTime: 0 });
  });

  it('is in time within two days on an hourly meter', () => {
    const truth = [leak(FED, '2024-03-10T12:00')];
    const at = (openedAt: string) => score(truth, [{ property: FED, kind: 'steady flow', openedAt }]).unexplainedUse['hourly'];
    expect(at('2024-03-12T11:00')).toMatchObject({ judged: 1, inTime: 1 });
    expect(at('2024-03-12T13:00')).toMatchObject({ judged: 1, found: 1, inTime: 0 });
  });

  it('does not count a finding opened before the fault, on another property, or of a kind that is not right', () => {
    const wrong: Opened[] = [
      { property: 'Leaky', kind: 'unexplained use', openedAt: '2024-03-03T10:00' },
      { property: 'Quiet', kind: 'unexplained use', openedAt: '2024-04-02T10:00' },
      { property: 'Leaky', kind: 'over-programmed', openedAt: '2024-04-02T10:00' },
    ];
    const { unexplainedUse, falseAlarms } = score([leak('Leaky', '2024-03-10T12:00')], wrong);
    expect(unexplainedUse['monthly']).toMatchObject({ judged: 1, found: 0, recall: 0 });
    expect(falseAlarms).toMatchObject({ count: 2, onHealthy: 1, healthyProperties: 6 });
  });

  it('leaves out a fault after which too few readings come to find it in time', () => {
    expect(score([leak('Late', '2024-07-10T12:00')], []).unexplainedUse['monthly']).toMatchObject({ judged: 0, recall: null });
  });

  it('takes overwatered as right only where settings are not known', () => {
    const opened = (property: string): Opened => ({ property, kind: 'overwatered', openedAt: '2024-04-02T10:00' });
    const both = score(
      [leak('Leaky', '2024-03-10T12:00'), leak('Unknown', '2024-03-10T12:00')],
      [opened('Leaky'), opened('Unknown')],
    ).unexplainedUse;
    expect(both['monthly']).toMatchObject({ judged: 1, found: 0 });
    expect(both['settings unknown']).toMatchObject({ judged: 1, found: 1 });
  });

  it('sorts faults by kind and size, and faults without a tenth of the month stay out of the promise', () => {
    const { byKindAndBand, unexplainedUse } = score([leak('Leaky', '2024-03-10T12:00', '', 0.04)], []);
    expect(byKindAndBand['continuous leak | 2-5 %']).toMatchObject({ judged: 1, found: 0 });
    expect(unexplainedUse['monthly']).toBeUndefined();
  });

  it('counts a slow leak from when it has grown to a tenth of the month', () => {
    const slow: Row = ['Leaky', 'M', '', '', 'slow leak', '2024-02-10T12:00', '', 0.4, 4, 'grows for 100 days'];
    const found = score([slow], [{ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-05-02T10:00' }]);
    // 25 days after 10 February; the second reading after 6 March is that of 2 May.
    expect(found.unexplainedUse['monthly']).toMatchObject({ judged: 1, inTime: 1 });
    expect(found.delays['monthly']).toMatchObject({ medianReadings: 2 });
  });

  it('counts a slow leak no sooner than the meter must register it', () => {
    // An inch meter must register 0.75 gpm: of 1.2 gpm after 62.5 days, that is from 13 April; 8 gpm are a tenth of the month sooner, on 6 March.
    const slow = (gpm: number): Row => ['Leaky', 'M', '', '', 'slow leak', '2024-02-10T12:00', '', 0.4, gpm, 'grows for 100 days'];
    const opened: Opened[] = [{ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-05-02T10:00' }];
    const delays = [8, 1.2].map((gpm) => score([slow(gpm)], opened).delays['monthly']?.medianDays ?? Number.NaN);
    expect(delays.map((days) => Math.round(days))).toEqual([57, 19]);
  });

  it('leaves out a second leak while the first is found and runs on', () => {
    const truth = [leak('Leaky', '2024-02-10T12:00'), leak('Leaky', '2024-04-10T12:00')];
    const opened: Opened[] = [{ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-03-03T10:00' }];
    expect(score(truth, opened).unexplainedUse['monthly']).toMatchObject({ judged: 1, found: 1 });
    expect(score(truth, []).unexplainedUse['monthly']).toMatchObject({ judged: 2, found: 0 });
  });

  it('refuses a kind of fault that its table does not know', () => {
    expect(() => score([['Leaky', 'M', '', '', 'gremlins', '2024-03-10T12:00', '', 0.2, '', '']], [])).toThrow(/gremlins/);
  });
});

describe('false alarms', () => {
  it('are the six kinds that nothing explains; a fair consequence of a fault is none', () => {
    const { falseAlarms } = score(
      [leak('Leaky', '2024-03-10T12:00')],
      [
        { property: 'Leaky', kind: 'doubtful reading', openedAt: '2024-04-02T10:00' },
        { property: 'Leaky', kind: 'not delivering', openedAt: '2024-04-02T10:00' },
        { property: 'Quiet', kind: 'stale', openedAt: '2024-04-02T10:00' },
      ],
    );
    expect(falseAlarms).toMatchObject({ count: 1, onHealthy: 0, byKind: { 'not delivering': 1, 'doubtful reading': 0 } });
  });

  it('begin again once a repaired leak is two readings old', () => {
    const truth = [leak('Leaky', '2024-02-10T12:00', '2024-03-20T12:00')];
    const at = (openedAt: string) => score(truth, [{ property: 'Leaky', kind: 'unexplained use', openedAt }]).falseAlarms.count;
    expect(at('2024-05-02T10:00')).toBe(0);
    expect(at('2024-06-01T10:00')).toBe(1);
  });

  it('fall as more confidence is asked, and recall with them', () => {
    const { curve } = score(
      [leak('Leaky', '2024-03-10T12:00')],
      [
        { property: 'Leaky', kind: 'unexplained use', openedAt: '2024-04-02T10:00', confidence: 0.96 },
        { property: 'Quiet', kind: 'unexplained use', openedAt: '2024-04-02T10:00', confidence: 0.92 },
      ],
    );
    const at = (level: number) => curve.find(({ leastConfidence }) => leastConfidence === level)!;
    expect(at(0.9).recall).toBe(1);
    expect(at(0.9).falseAlarmsPerSiteYear).toBeGreaterThan(0);
    expect(at(0.95)).toMatchObject({ recall: 1, falseAlarmsPerSiteYear: 0 });
    expect(at(0.975)).toMatchObject({ recall: 0 });
  });
});

describe('what is told apart', () => {
  it('is the zone: only the one that broke, named alone, is right', () => {
    const broken: Row = [FED, 'M', 'Zone 2', 'A', 'broken head', '2024-03-10T04:00', '', 0.3, '', ''];
    const named = (zone: string) =>
      score([broken], [{ property: FED, kind: 'zone flow changed', openedAt: '2024-03-11T05:00', zone }]).attribution;
    expect(named('Zone 2')).toMatchObject({ found: 1, right: 1 });
    expect(named('Zone 3')).toMatchObject({ found: 1, right: 0 });
    expect(named('Zone 2; Zone 3')).toMatchObject({ found: 1, right: 0 });
  });

  it('is a misread by its reading, and a rollover that was called one', () => {
    const misread: Row = ['Misread', 'M', '', '', 'misread', '2024-03-03T10:00', '2024-03-03T10:00', 0.5, '', 'x 10'];
    const rollover: Row = ['Quiet', 'M', '', '', 'rollover', '2024-05-02T10:00', '2024-05-02T10:00', '', '', ''];
    const doubtful = (property: string, openedAt: string): Opened => ({ property, kind: 'doubtful reading', openedAt });
    const found = score([misread, rollover], [doubtful('Misread', '2024-03-03T10:00'), doubtful('Quiet', '2024-05-02T10:00')]);
    expect(found.misreads['x 10']).toMatchObject({ judged: 1, found: 1, inTime: 1 });
    expect(found.rollovers).toEqual({ count: 1, calledMisread: 1 });
    const other = score([misread, rollover], [doubtful('Misread', '2024-07-01T10:00')]);
    expect(other.misreads['x 10']).toMatchObject({ found: 0 });
    expect(other.rollovers).toEqual({ count: 1, calledMisread: 0 });
  });

  it('is a wrong flow from a leak', () => {
    const wrong: Row = ['Wrong flows', 'M', '', '', 'wrong recorded flows', '2024-01-02T00:00', '', 0.2, '', ''];
    const tested = score([wrong], [{ property: 'Wrong flows', kind: 'flow to be tested', openedAt: '2024-06-01T10:00' }]).flowTests;
    expect(tested).toMatchObject({ judged: 1, found: 1, leakAlarms: 0 });
    const alarmed = score([wrong], [{ property: 'Wrong flows', kind: 'unexplained use', openedAt: '2024-06-01T10:00' }]);
    expect(alarmed.flowTests).toMatchObject({ judged: 1, found: 0, leakAlarms: 1 });
    expect(alarmed.falseAlarms.count).toBe(1);
  });

  it('is a leak that the meter cannot see: below 0.75 gpm on a one-inch meter', () => {
    const small: Row = [FED, 'M', '', '', 'continuous leak', '2024-03-10T12:00', '', 0.1, 0.7, ''];
    const { steady } = score(
      [leak(FED, '2024-04-10T12:00'), small],
      [{ property: FED, kind: 'steady flow', openedAt: '2024-04-11T05:00' }],
    );
    expect(steady.above).toMatchObject({ judged: 1, found: 1 });
    expect(steady.below.judged).toBe(1);
  });

  it('is the settings gap of a month in the reference', () => {
    const header = ['property', 'month', 'needed_gal', 'programmed_gal', 'over_gal', 'under_gal', 'through_meters_gal', 'usual_month_gal'];
    const gaps = csv(
      header,
      ['Quiet', '2024-04', 10_000, 15_000, 5000, 0, 15_000, 10_000],
      ['Leaky', '2024-04', 10_000, 10_000, 0, 0, 10_000, 10_000],
    ); // prettier-ignore
    const over = (property: string): Opened => ({ property, kind: 'over-programmed', openedAt: '2024-04-30T10:00' });
    expect(score([], [over('Quiet')], gaps).settingsGaps['over-programmed']).toEqual({ clear: 1, found: 1, opened: 1, without: 0 });
    expect(score([], [over('Leaky')], gaps).settingsGaps['over-programmed']).toEqual({ clear: 1, found: 0, opened: 1, without: 1 });
  });
});

describe('findings as they stand at the end', () => {
  it('are known by when they were opened, and faults that ended long before are not judged', () => {
    const truth = csv(TRUTH_COLUMNS, leak('Leaky', '2024-03-10T12:00'), leak('Late', '2024-02-10T12:00', '2024-04-10T12:00'));
    const opened = findings({ property: 'Leaky', kind: 'unexplained use', openedAt: '2024-08-01T10:00' });
    const { keepsHistory, unexplainedUse } = scoreFleet({ files, truth, findings: opened });
    expect(keepsHistory).toBe(false);
    expect(unexplainedUse['monthly']).toMatchObject({ judged: 1, found: 1 });
  });
});

describe('a labelled fleet', () => {
  const wish = { seed: 11, properties: 6, months: 8, hourly: 0.3 };

  it('is the same byte for byte for the same seed, and another for another', () => {
    const one = labelledFleet(wish);
    expect(labelledFleet(wish)).toEqual(one);
    expect(labelledFleet({ ...wish, seed: 12 }).files['zones.csv']).not.toBe(one.files['zones.csv']);
  });

  it('has only the faults that are asked for', () => {
    const { truth } = labelledFleet({ seed: 5, properties: 30, months: 10, only: ['stuck valve'] });
    const kinds = new Set(
      truth
        .trimEnd()
        .split('\n')
        .slice(1)
        .map((line) => line.split(',')[4]),
    ); // prettier-ignore
    for (const standing of ['wrong recorded flows', 'rollover', 'swap', 'missed pause']) kinds.delete(standing);
    expect([...kinds]).toEqual(['stuck valve']);
    expect(() => labelledFleet({ ...wish, only: ['gremlins'] })).toThrow(/gremlins/);
  });
});
