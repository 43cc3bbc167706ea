// What the timers really ran, minute by minute, from the settings in force.
import { dayAt, LAST_DAY, monthText, startOfDay, WORK_FROM } from '../sky/calendar.mjs';
import { isPaused } from './pauses.mjs';
import { runsOn, startsOf } from './program-days.mjs';

function settingsAt(facts, minute) {
  let inForce = null;
  for (const fact of facts) if (fact.record !== 'planned' && fact.at <= minute) inForce = fact;
  return inForce;
}

function actualMinutes(controller, minutes, percent) {
  const adjusted = (minutes * percent) / 100;
  const step = controller.model.minuteStep;
  return step ? Math.round(adjusted / step) * step : adjusted;
}

/** Stations one after another, cycle by cycle, with the soak kept between two cycles of the same station. */
function runProgram(controller, program, percent, begin, runs) {
  const ended = new Map();
  let clock = begin;
  for (let cycle = 1; cycle <= 4; cycle += 1) {
    for (const { station, minutes, cycles, soak } of program.stations) {
      if (cycle > cycles) continue;
      clock = Math.max(clock, (ended.get(station) ?? clock) + (cycle > 1 ? (soak ?? 0) : 0));
      const length = actualMinutes(controller, minutes, percent) / cycles;
      runs.push({ zone: controller.zones[station - 1], start: clock, minutes: length });
      clock += length;
      ended.set(station, clock);
    }
  }
  return clock;
}

/** A timer that adjusts itself puts back each early morning what the day before took. */
function runByWeather(controller, day, runs) {
  let clock = startOfDay(day) + 3 * 60;
  for (const zone of controller.zones) {
    const minutes = (1.01 * (zone.need.get(day - 1) ?? 0)) / zone.flowGpm;
    if (minutes < 0.5) continue;
    runs.push({ zone, start: clock, minutes });
    clock += minutes;
  }
}

/** The program as the settings of that minute have it, if it starts then. */
function startingAt(controller, facts, name, minute) {
  const settings = settingsAt(facts, minute);
  const program = settings?.state === 'on' ? settings.programs[name] : undefined;
  const day = dayAt(minute);
  if (!program || !startsOf(program).includes(minute - startOfDay(day))) return null;
  if (!runsOn(program.days, day) || isPaused(controller.pauses, minute)) return null;
  const monthly = controller.monthly?.[Number(monthText(day).slice(5)) - 1] ?? 100;
  return { minute, program, percent: settings.percents[name] ?? monthly };
}

function dueStarts(controller, facts, day) {
  const found = [];
  for (const name of Object.keys(controller.programs)) {
    for (const start of new Set(facts.flatMap((fact) => (fact.programs[name] ? startsOf(fact.programs[name]) : [])))) {
      const due = startingAt(controller, facts, name, startOfDay(day) + start);
      if (due) found.push(due);
    }
  }
  return found.sort((one, other) => one.minute - other.minute);
}

/** @returns runs in order: the zone, the minute it starts, its minutes */
export function runsOf(controller) {
  const runs = [];
  const facts = controller.facts;
  let free = 0;
  for (let day = WORK_FROM; day <= LAST_DAY; day += 1) {
    if (settingsAt(facts, startOfDay(day) + 180)?.state === 'weather') runByWeather(controller, day, runs);
    for (const { minute, program, percent } of dueStarts(controller, facts, day)) {
      free = runProgram(controller, program, percent, Math.max(free, minute), runs);
    }
  }
  return runs;
}
