import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { daysHeldBack } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import { replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { RainPause } from '@rillbook/irrigation/settings/rain-pause.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { RainOfDay } from '../../accounts/needs/root-zones-today.service.js';

/** What a pause would stop: programs, pauses that are there already and rain, all in the property's own time. */
export interface StoppedWater {
  readonly traits: ControllerTraits;
  readonly programs: readonly Program[];
  readonly pauses: readonly RainPause[];
  readonly zones: readonly AccountZone[];
  readonly rain: readonly RainOfDay[];
  /** 'YYYY-MM-DDTHH:mm' */
  readonly now: string;
  readonly until: string;
}

/** The most sensitive of the usual thresholds, an eighth of an inch, where nobody has said: the least is then kept. Common practice. */
const SENSITIVE_MM = 3.175;
const LONG_AGO = '2000-01-01T00:00';

/**
 * Water that the programs would put out until the pause ends, less what the rain sensor holds back; null where the flow of a zone that runs is
 * not known. The hour that a clock gains or loses moves runs and takes none away, so it is left out. [L]
 */
export function keptByPause({ traits, programs, pauses, zones, rain, now, until }: StoppedWater): number | null {
  const firstDay = dayNumberOfDate(now.slice(0, 10));
  const days = dayNumberOfDate(until.slice(0, 10)) - firstDay + 1;
  const sensor = { ...traits, rainSensorMm: traits.rainSensorMm ?? (traits.rainSensor ? SENSITIVE_MM : null) };
  const facts = [{ effectiveAt: LONG_AGO, record: 'found' as const, state: 'on' as const, programs }];
  const input = { firstDay, days, facts, pauses, traits: sensor, clockChanges: [] };
  const fallen = rainByDay(rain, firstDay, days);
  const running = { ...input, daysWithoutStarts: daysHeldBack(input, fallen) };
  const without = replayController(running).stations;
  const paused = replayController({ ...running, pauses: [...pauses, { from: now, until }] }).stations;
  const flows = new Map(zones.map(({ station, flowLPerMin }) => [station, flowLPerMin]));
  let litres = 0;
  for (const [station, { totalMinutes }] of without) {
    const minutes = totalMinutes - (paused.get(station)?.totalMinutes ?? 0);
    const flow = flows.get(station) ?? null;
    if (minutes > 0 && flow === null) return null;
    litres += minutes * (flow ?? 0);
  }
  return litres;
}

const DAYS_BEFORE = 7;

function rainByDay(rain: readonly RainOfDay[], firstDay: number, days: number) {
  const rainMm = new Array<number>(DAYS_BEFORE + days).fill(0);
  for (const { date, mm } of rain) {
    const at = dayNumberOfDate(date) - firstDay + DAYS_BEFORE;
    if (at >= 0 && at < rainMm.length) rainMm[at] = mm;
  }
  return { firstDay: firstDay - DAYS_BEFORE, rainMm };
}
