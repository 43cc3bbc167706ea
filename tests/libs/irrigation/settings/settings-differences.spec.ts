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
});
