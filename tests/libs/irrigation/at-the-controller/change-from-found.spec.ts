import { changeFromFound } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { programInWords } from '@rillbook/irrigation/at-the-controller/program-in-words.js';
import { leastChange } from '@rillbook/irrigation/planning/offers/least-change.js';
import type { Program, ProgramDays } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { inventedController } from '../../../support/planning/controllers.mjs';
import { aController, noRule, zoneInInches } from '../planning/a-controller.js';

const found = (minutes: number, days: ProgramDays = { kind: 'daily' }): Program => ({
  name: 'A',
  days,
  starts: [60],
  adjustPercent: 100,
  stations: [{ station: 1, minutes, cycles: 1, soakMinutes: 0 }],
});

describe('the change from what was found', () => {
  it('turns the percent so that a day gives what a day needs', () => {
    // Roots that hold one day of water: 0.2 in a day at 1 in/h are 12 minutes; 60 % of the 20 that were found.
    const { present: _, ...ground } = aController([zoneInInches(1, 0.2, 1, { storageDays: 1 })]);
    const change = changeFromFound(ground, [found(20)]);
    if (change.kind !== 'enter') throw new Error(change.kind);
    expect(change.offer).toMatchObject({ kind: 'percent', programs: [{ ...found(20), adjustPercent: 60 }] });
    // 31 days of 5.08 mm on 100 m2 are 15,748 L; as found 20 of 12 minutes.
    expect(change.offer.judgement.usedLitres).toBeCloseTo(15_748, 0);
    expect(change.asFound.usedLitres).toBeCloseTo((15_748 * 20) / 12, 0);
  });

  it('is the least change of a plan whose present programs are those that were found', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const input = inventedController(seed, { mostZones: 6, mostPrograms: 2 });
      const { present, ...ground } = input;
      if (!present?.length) continue;
      const change = changeFromFound(ground, present);
      expect(change.kind === 'enter' ? change.offer : null).toEqual(leastChange(input));
    }
  });

  it('says why nothing can be said', () => {
    const { present: _, ...ground } = aController([zoneInInches(1, 0.2, 1, { storageDays: 1 })]);
    const strange = { ...found(20), stations: [...found(20).stations, { station: 9, minutes: 5, cycles: 1, soakMinutes: 0 }] };
    expect(changeFromFound(ground, [strange])).toEqual({ kind: 'stations without zone', stations: [9] });
    const never = { ...ground, rules: [{ ...noRule, allowedDays: { kind: 'none' as const } }] };
    expect(changeFromFound(never, [found(20)])).toEqual({ kind: 'nothing keeps all' });
  });
});

describe('a program in words', () => {
  it('is written as people set it', () => {
    const days: readonly [ProgramDays, string][] = [
      [{ kind: 'daily' }, 'daily'],
      [{ kind: 'even' }, 'even'],
      [{ kind: 'weekdays', weekdays: ['Mon', 'Fri'] }, 'Mon Fri'],
      [{ kind: 'every', everyDays: 3, from: '2026-06-01' }, 'every 3 from 2026-06-01'],
    ];
    for (const [of, words] of days) expect(programInWords(found(12, of)).days).toBe(words);
    expect(programInWords({ ...found(12), starts: [0, 65, 1439] }).starts).toEqual(['00:00', '01:05', '23:59']);
  });
});
