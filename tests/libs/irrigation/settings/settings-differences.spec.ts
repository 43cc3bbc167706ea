import { sameSettings, settingsDifferences } from '@rillbook/irrigation/settings/settings-differences.js';
import type { Program, SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';

const program: Program = {
  name: 'A',
  days: { kind: 'weekdays', weekdays: ['Mon', 'Wed'] },
  starts: [300, 1350],
  adjustPercent: 100,
  stations: [
    { station: 1, minutes: 10, cycles: 1, soakMinutes: 0 },
    { station: 2, minutes: 20, cycles: 2, soakMinutes: 30 },
  ],
};
const fact = (changes: Partial<Program> = {}): SettingsFact => ({
  effectiveAt: '2026-06-01T08:00',
  record: 'planned',
  state: 'on',
  programs: [{ ...program, ...changes }],
});

describe('settings differences', () => {
  it('are none where only order and date differ', () => {
    const found: SettingsFact = {
      ...fact({ starts: [1350, 300], days: { kind: 'weekdays', weekdays: ['Wed', 'Mon'] }, stations: [...program.stations].reverse() }),
      record: 'found',
      effectiveAt: '2026-06-09T10:00',
    };
    expect(sameSettings(fact(), found)).toBe(true);
  });

  it('name the program, station and both values', () => {
    const found = fact({
      adjustPercent: 120,
      starts: [300],
      days: { kind: 'daily' },
      stations: [
        { station: 1, minutes: 12, cycles: 3, soakMinutes: 20 },
        { station: 4, minutes: 5, cycles: 1, soakMinutes: 0 },
      ],
    });
    expect(settingsDifferences(fact(), found)).toEqual([
      { what: 'days', program: 'A', station: null, wanted: { kind: 'weekdays', weekdays: ['Mon', 'Wed'] }, found: { kind: 'daily' } },
      { what: 'starts', program: 'A', station: null, wanted: [300, 1350], found: [300] },
      { what: 'percent', program: 'A', station: null, wanted: 100, found: 120 },
      { what: 'minutes', program: 'A', station: 1, wanted: 10, found: 12 },
      { what: 'cycles', program: 'A', station: 1, wanted: 1, found: 3 },
      { what: 'station-missing', program: 'A', station: 2, wanted: 20, found: null },
      { what: 'station-extra', program: 'A', station: 4, wanted: null, found: 5 },
    ]);
  });

  it('name programs that are missing or extra', () => {
    const found: SettingsFact = { ...fact(), programs: [{ ...program, name: 'C' }] };
    expect(settingsDifferences(fact(), found).map(({ what, program: name }) => [what, name])).toEqual([
      ['program-missing', 'A'],
      ['program-extra', 'C'],
    ]);
  });

  it('stop at the state where one is not on', () => {
    expect(settingsDifferences(fact(), { ...fact(), state: 'off', programs: [] })).toEqual([
      { what: 'state', program: null, station: null, wanted: 'on', found: 'off' },
    ]);
  });

  it('are none where neither is on, whatever the programs say', () => {
    expect(settingsDifferences({ ...fact(), state: 'off' }, { ...fact({ adjustPercent: 50 }), state: 'off', programs: [] })).toEqual([]);
  });

  it('tell intervals apart by their days and by the day from which they count', () => {
    const every = (everyDays: number, from: string) => fact({ days: { kind: 'every', everyDays, from } });
    expect(sameSettings(every(3, '2026-06-01'), every(3, '2026-06-01'))).toBe(true);
    expect(settingsDifferences(every(3, '2026-06-01'), every(2, '2026-06-01')).map(({ what }) => what)).toEqual(['days']);
    expect(settingsDifferences(every(3, '2026-06-01'), every(3, '2026-06-02')).map(({ what }) => what)).toEqual(['days']);
  });

  it('tell daily, odd, even and weekdays apart; all seven weekdays are daily', () => {
    const daysOf = (days: Program['days']) => fact({ days });
    const seven = daysOf({ kind: 'weekdays', weekdays: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] });
    const six = daysOf({ kind: 'weekdays', weekdays: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri'] });
    expect(sameSettings(seven, daysOf({ kind: 'daily' }))).toBe(true);
    expect(sameSettings(six, daysOf({ kind: 'daily' }))).toBe(false);
    expect(sameSettings(daysOf({ kind: 'odd' }), daysOf({ kind: 'even' }))).toBe(false);
    expect(sameSettings(fact(), daysOf({ kind: 'weekdays', weekdays: ['Mon', 'Mon', 'Wed'] }))).toBe(true);
    expect(sameSettings(fact(), daysOf({ kind: 'weekdays', weekdays: ['Mon', 'Thu'] }))).toBe(false);
  });

  it('tell a soak apart only where both run more than one cycle', () => {
    const soaking = (cycles: number, soakMinutes: number) => fact({ stations: [{ station: 1, minutes: 10, cycles, soakMinutes }] });
    expect(settingsDifferences(soaking(2, 30), soaking(2, 45))).toEqual([
      { what: 'soak', program: 'A', station: 1, wanted: 30, found: 45 },
    ]);
    expect(sameSettings(soaking(1, 30), soaking(1, 45))).toBe(true);
    expect(settingsDifferences(soaking(2, 30), soaking(1, 45)).map(({ what }) => what)).toEqual(['cycles']);
    expect(settingsDifferences(soaking(1, 30), soaking(2, 45)).map(({ what }) => what)).toEqual(['cycles']);
  });

  it('add the lines of one station, and take zero minutes as not there', () => {
    const line = (station: number, minutes: number) => ({ station, minutes, cycles: 1, soakMinutes: 0 });
    expect(sameSettings(fact({ stations: [line(1, 10), line(1, 5)] }), fact({ stations: [line(1, 15)] }))).toBe(true);
    expect(sameSettings(fact({ stations: [line(1, 10), line(2, 0)] }), fact({ stations: [line(1, 10)] }))).toBe(true);
    expect(sameSettings(fact({ stations: [line(2, 0)] }), fact({ stations: [line(2, 0)] }))).toBe(true);
  });

  it('come by station number, whatever the order in which they run', () => {
    const line = (station: number) => ({ station, minutes: 10, cycles: 1, soakMinutes: 0 });
    const differences = settingsDifferences(fact({ stations: [line(10), line(2), line(1)] }), fact({ stations: [] }));
    expect(differences.map(({ station }) => station)).toEqual([1, 2, 10]);
  });

  it('take the same start twice as one, and order starts as numbers', () => {
    expect(sameSettings(fact({ starts: [300, 300, 1350] }), fact())).toBe(true);
    expect(settingsDifferences(fact({ starts: [1000, 90] }), fact({ starts: [90] }))[0]?.wanted).toEqual([90, 1000]);
  });

  it('compare programs by name, each with its own', () => {
    const b = { ...program, name: 'B', adjustPercent: 80 };
    const wanted: SettingsFact = { ...fact(), programs: [program, b] };
    expect(sameSettings(wanted, { ...wanted, programs: [b, program] })).toBe(true);
  });
});
