import { episodeOfSighting, keepMost, type Sighting } from '@rillbook/metering/detection/hourly/episode-of-sighting.js';
import { sameDesign } from '@rillbook/metering/detection/hourly/flows/same-design.js';
import { edgeVariance, otherVariance, runVariance, stepVariance } from '@rillbook/metering/detection/hourly/flows/step-variance.js';
import { lastRunMinute, type NamedChange, zoneSighting } from '@rillbook/metering/detection/hourly/flows/zone-sighting.js';
import { describe, expect, it } from 'vitest';
import { HOURS, handMeter, MINUTES } from './hand-meter.js';

describe('how a step of runs scatters', () => {
  it('is 4 % of its litres, and 4 % of the step at the edge where the run fills it in part', () => {
    const meter = handMeter({ flows: [10], resolution: 6 });
    expect(runVariance(meter, 600, 60)).toBe(24 ** 2);
    expect(runVariance(meter, 600, 120)).toBe(24 ** 2);
    // Ten litres a minute: an edge of 2.4 min.
    expect(runVariance(meter, 300, 30)).toBeCloseTo(12 ** 2 + 24 ** 2, 9);
    expect(runVariance(meter, 0, 0)).toBe(0);
  });

  it('comes to the register and to people', () => {
    const meter = handMeter({ flows: [10], resolution: 6 });
    meter.indoorSd.fill(4);
    meter.scatter = 0.5;
    expect(otherVariance(meter, 3)).toBe(6 + 16);
    expect(stepVariance(meter, 3, 600, 60)).toBe(12 ** 2 + 22);
    expect(edgeVariance(meter, 3, 10)).toBeCloseTo(12 ** 2 + 22, 9);
    const byMeter = handMeter({ resolution: null, evidence: { resolutionLitres: 12 } });
    expect([otherVariance(byMeter, 0), otherVariance(handMeter({ resolution: null }), 0)]).toEqual([24, 1 / 6]);
  });
});

it('a day is of the design that was learnt where every zone ran as long on four of those days, within half a minute', () => {
  const days = [0, 1, 2, 3, 4, 5];
  const runs = [20, 20.5, 19.5, 20, 21, 20].map((minutes, day) => [1, day, 300, minutes] as const);
  const meter = handMeter({ days: 7, flows: [10, 5], runs: [...runs, [1, 6, 300, 12], [1, 6, 600, 8]] });
  expect(sameDesign(meter, days, 6)).toBe(true);
  expect(sameDesign(meter, [0, 1, 2, 3], 6)).toBe(true);
  expect(sameDesign(meter, [0, 1, 2, 4], 6)).toBe(false);
  const also = handMeter({ days: 7, flows: [10, 5], runs: [...runs, [1, 6, 300, 20], [2, 6, 330, 10]] });
  expect(sameDesign(also, days, 6)).toBe(false);
  expect(sameDesign(also, days, 5)).toBe(true);
});

describe('a zone whose flow changed', () => {
  // Zone 1 for 30 minutes a day, zone 2 for an hour; forty days.
  const meter = handMeter({
    days: 40,
    flows: [10, 20],
    controllers: ['c1', 'c2'],
    runs: Array.from({ length: 40 }, (_, day) => [[1, day, 300, 30] as const, [2, day, 360, 60] as const]).flat(),
  });
  for (let day = 0; day < 39; day++) meter.touched.set([1, 1, 0, 1], day * HOURS + 5);
  const named = (more: Partial<NamedChange>): NamedChange => ({
    zones: [0],
    everywhere: false,
    score: { change: 0.5, sd: 0.1 },
    firstDay: 35,
    runDays: 4,
    day: 38,
    ...more,
  });
  const month = (30 * 365.25) / 12;

  it('was last judged at the end of the last step that its runs touched', () => {
    expect(lastRunMinute(meter, 38)).toBe(38 * MINUTES + 9 * 60);
    expect(lastRunMinute(meter, 39)).toBe(40 * MINUTES);
  });

  it('passes more: litres of a month by its minutes, and what to look at', () => {
    const sighting = zoneSighting(meter, named({}));
    expect(sighting).toMatchObject({
      kind: 'zone flow changed',
      code: 'zone flow changed',
      ofZone: true,
      costs: true,
      clearedMinute: null,
    });
    expect([sighting.fromMinute, sighting.openedMinute]).toEqual([35 * MINUTES, 38 * MINUTES + 540]);
    expect(sighting.litres).toBeCloseTo(0.5 * 10 * month, 6);
    expect(sighting.sdLitres).toBeCloseTo(0.1 * 10 * month, 6);
    expect(sighting.confidence).toBeGreaterThan(0.999_999);
    expect(sighting.details).toEqual({
      change: 0.5,
      ratio: 1.5,
      usualLitresPerMinute: 10,
      litresPerMinute: 15,
      lookAt: 'broken head or pipe',
    });
  });

  it('passes less, or next to nothing from 15 % down, and never less than that', () => {
    const told = (change: number) => zoneSighting(meter, named({ score: { change, sd: 0.1 } }));
    expect(told(-0.84)).toMatchObject({ kind: 'zone flow changed', costs: false, details: { lookAt: 'clogged heads or filter' } });
    expect(told(-0.85)).toMatchObject({ kind: 'not delivering', code: 'not delivering zone', details: { lookAt: 'valve or wiring' } });
    expect(told(-1.1).details).toMatchObject({ ratio: 0, litresPerMinute: 0 });
    expect(told(-0.84).litres).toBeCloseTo(0.84 * 10 * month, 6);
  });

  it('names both of two that usage does not tell apart, and is judged by the likelier', () => {
    const sighting = zoneSighting(meter, named({ zones: [1, 0] }));
    expect(sighting.details).toMatchObject({ zoneIds: ['z2', 'z1'], usualLitresPerMinute: 20 });
    expect(sighting.litres).toBeCloseTo(0.5 * 20 * 2 * month, 6);
  });

  it('of all zones at once is pressure or the main, and has no flow of its own', () => {
    const sighting = zoneSighting(meter, named({ zones: [0, 1], everywhere: true, score: { change: -0.4, sd: 0.05 } }));
    expect(sighting).toMatchObject({ kind: 'not delivering', code: 'not delivering pressure', ofZone: false });
    expect(sighting.details).toEqual({
      change: -0.4,
      ratio: 0.6,
      usualLitresPerMinute: null,
      litresPerMinute: null,
      lookAt: 'pressure or main',
    });
    expect(sighting.litres).toBeCloseTo(0.4 * (10 + 40) * month, 6);
  });

  it('is an episode in dates: cause of the zone, its controller and money; an end at midnight belongs to the day before', () => {
    const sighting = zoneSighting(meter, named({}));
    const open = episodeOfSighting(meter, sighting);
    expect(open).toMatchObject({
      causeKey: 'zone flow changed zone:z1 2026-07-06',
      causeFamily: 'zone flow zone:z1',
      controllerId: 'c1',
      zoneIds: ['z1'],
      fromDate: '2026-07-06',
      untilDate: '2026-07-10',
      clearedLocalDay: null,
      says: { code: 'zone flow changed', details: { zoneId: 'z1', since: '2026-07-06', meterId: 'm1', ratio: 1.5 } },
    });
    expect(open.money).toBeCloseTo(0.01 * 0.5 * 10 * month, 6);
    expect(open.openedLocalDay - meter.evidence.firstDay).toBe(38.375);
    const ended = episodeOfSighting(meter, { ...sighting, clearedMinute: 38 * MINUTES, costs: false });
    expect([ended.untilDate, ended.money]).toEqual(['2026-07-08', null]);
    expect(Number(ended.clearedLocalDay) - meter.evidence.firstDay).toBe(38);
  });

  it('of the meter has the cause of an excess, no controller where there are two, and no zone where it may be either', () => {
    const of = (more: Partial<Sighting>) => episodeOfSighting(meter, { ...zoneSighting(meter, named({})), ...more });
    expect(of({ ofZone: false, kind: 'steady flow', zones: [0, 1] })).toMatchObject({
      causeKey: 'steady flow meter:m1 2026-07-06',
      causeFamily: 'excess meter:m1',
      controllerId: null,
      says: { details: { zoneId: null } },
    });
    expect(of({ zones: [1, 0] })).toMatchObject({
      causeFamily: 'zone flow zone:z2',
      controllerId: null,
      says: { details: { zoneId: null } },
    });
    expect(of({ kind: 'flow to be tested', ofZone: false })).toMatchObject({
      causeKey: 'flow to be tested meter:m1',
      causeFamily: 'flow to be tested meter:m1',
    });
    expect(of({ litres: null }).money).toBeNull();
    expect(of({ ofZone: false, zones: [] }).controllerId).toBeNull();
  });

  it('keeps the most that was known of it, though nothing is known of it now', () => {
    const sighting = { litres: null, confidence: 0.5, clearedMinute: null } as unknown as Sighting;
    keepMost([sighting]);
    expect(sighting.atMost).toEqual({ litres: null, confidence: 0.5 });
    Object.assign(sighting, { litres: 30, confidence: 0.4 });
    keepMost([sighting]);
    Object.assign(sighting, { litres: null, confidence: 0.9 });
    keepMost([sighting]);
    expect(sighting.atMost).toEqual({ litres: 30, confidence: 0.9 });
  });
});
