import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import { type ReplayInput, replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program, SettingsFact, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';

/** A timer of which nobody has said what it holds: it runs one program at once and rounds nothing. */
export const anyTimer: ControllerTraits = {
  stations: null,
  programs: null,
  startsPerProgram: null,
  maxMinutes: null,
  minuteStep: null,
  adjustScope: 'program',
  adjustStepPercent: null,
  maxAdjustPercent: null,
  monthlyAdjustPercent: null,
  runsAtOnce: null,
  cycleSoak: null,
  rainSensor: null,
  rainSensorMm: null,
};

/** A station's minutes per start, in one cycle unless said otherwise. */
export const stationRun = (station: number, minutes: number, cycles = 1, soakMinutes = 0): StationRun => ({
  station,
  minutes,
  cycles,
  soakMinutes,
});

/** Program A: station 1 for ten minutes, daily at five, unless said otherwise. */
export const program = (changes: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'daily' },
  starts: [300],
  adjustPercent: 100,
  stations: [stationRun(1, 10)],
  ...changes,
});

/** What was left on the timer in May, unless said otherwise. */
export const left = (programs: readonly Program[], changes: Partial<SettingsFact> = {}): SettingsFact => ({
  effectiveAt: '2026-05-01T00:00',
  record: 'left',
  state: 'on',
  programs,
  ...changes,
});

/** What is replayed: some days from 1 June 2026, a Monday, unless said otherwise. */
export const replayOf = (facts: readonly SettingsFact[], changes: Partial<ReplayInput> = {}): ReplayInput => ({
  firstDay: dayNumberOfDate('2026-06-01'),
  days: 3,
  facts,
  pauses: [],
  traits: anyTimer,
  clockChanges: [],
  ...changes,
});

/** Minutes of a station on each day. */
export const minutesOf = (facts: readonly SettingsFact[], changes: Partial<ReplayInput> = {}, station = 1) =>
  replayController(replayOf(facts, changes)).stations.get(station)?.minutes;
