import { stationsWithoutZone } from '@rillbook/irrigation/at-the-controller/stations-without-zone.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { expect, it } from 'vitest';

const running = (name: string, minutes: Readonly<Record<number, number>>): Program => ({
  name,
  days: { kind: 'daily' },
  starts: [60],
  adjustPercent: 100,
  stations: Object.entries(minutes).map(([station, each]) => ({ station: Number(station), minutes: each, cycles: 1, soakMinutes: 0 })),
});

it('names stations that run where no zone is known, each once, the lowest first; one at no minutes does not run', () => {
  const zones = [{ station: 1 }, { station: 3 }];
  const programs = [running('A', { 1: 10, 12: 5, 7: 0 }), running('B', { 4: 10, 12: 10 })];
  expect(stationsWithoutZone(zones, programs)).toEqual([4, 12]);
  expect(stationsWithoutZone([...zones, { station: 4 }, { station: 12 }], programs)).toEqual([]);
});
