// The settings of each controller through the fleet's time, as crews recorded them, the pauses, and the runs they make.
import { dateText, dayAt, monthText, startOfDay } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';
import { daysAWeek, runsOn, startsOf } from '../../../../apps/api/demo/generator/timers/program-days.mjs';

const LAWN_DAYS = ['Mon Wed Fri', 'Tue Thu Sat', 'odd', 'even', 'daily', 'every 2', 'Mon Tue Thu Sat'];
const BED_DAYS = ['Mon Thu', 'Tue Sat', 'Wed', 'every 3', 'every 4'];
/** cycles, when a station's minutes are more than so many */
const CYCLE_MIN = { lawn: 18, beds: 22, drip: 240 };
const MODELS = [
  { programs: 3, starts: 4, maxMinutes: 600, minuteStep: 1, scope: 'controller', step: 10, most: 200 },
  { programs: 4, starts: 4, maxMinutes: 600, minuteStep: null, scope: 'controller', step: 5, most: 250 },
  { programs: 4, starts: 8, maxMinutes: 720, minuteStep: null, scope: 'program', step: 1, most: 300 },
];
const IDLE_PERCENT = 12;
const PAUSING_MM = 6.4;
const SENSOR_MM = 6.35;

function daysFor(group, dice, from) {
  const days = dice.pick(group === 'lawn' ? LAWN_DAYS : BED_DAYS);
  return days.startsWith('every') ? `${days} from ${dateText(from - 100)}` : days;
}

/** Programs by kind of plants; with one program everything runs in the lawn's. */
function drawPrograms(controller, dice, from) {
  const groups = [...new Set(controller.zones.map((zone) => zone.group))];
  const together = groups.length === 1 || dice.uniform() < 0.2;
  const programs = together
    ? [{ group: groups[0], zones: controller.zones }]
    : groups.map((group) => ({ group, zones: controller.zones.filter((zone) => zone.group === group) })); // prettier-ignore
  const clock = dice.pick([22 * 60, 3 * 60, 4 * 60 + 30]);
  return programs.map((program, index) => {
    const start = (clock + index * 10) % 1440;
    const second = program.group === 'lawn' && dice.uniform() < 0.2 ? [(start + 240) % 1440] : [];
    const starts = [start, ...second]
      .sort((one, other) => one - other)
      .map(clockText)
      .join(' '); // prettier-ignore
    return { name: 'ABC'[index], ...program, days: daysFor(program.group, dice, from), starts };
  });
}

const clockText = (minute) => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

function needPerDay(zone, month) {
  let [sum, days] = [0, 0];
  for (const [day, gallons] of zone.need) {
    if (monthText(day).slice(5) !== month) continue;
    sum += gallons;
    days += 1;
  }
  return days ? sum / days : 0;
}

/** What each zone needs a day in each month of the year, on the weather that came: crews know their season. */
function seasonOf(zone) {
  const months = Array.from({ length: 12 }, (_, index) => String(index + 1).padStart(2, '0'));
  return new Map(months.map((month) => [month, needPerDay(zone, month)]));
}

function stationsOf(program, habit) {
  return program.zones.map((zone) => {
    const peak = Math.max(...zone.season.values());
    const perStart = (habit * zone.habit * peak * 7) / (daysAWeek(program.days) * startsOf(program).length * zone.flowGpm);
    const minutes = Math.min(240, Math.max(2, Math.round(perStart)));
    const cycles = Math.min(4, Math.max(1, Math.ceil(minutes / CYCLE_MIN[program.group])));
    return { station: zone.stationNumber, minutes, cycles, soak: cycles > 1 ? 20 : null };
  });
}

function percentOf(programs, month, model, dice) {
  const zones = programs.flatMap((program) => program.zones);
  const peak = zones.reduce((sum, zone) => sum + Math.max(...zone.season.values()), 0);
  const now = zones.reduce((sum, zone) => sum + zone.season.get(month), 0);
  const percent = (100 * now * (1 + 0.03 * dice.normal())) / Math.max(1e-9, peak);
  return Math.min(model.most, Math.max(0, Math.round(percent / model.step) * model.step));
}

function settingsFor(controller, month, dice) {
  const { programs, model } = controller;
  const one = model.scope === 'controller' ? percentOf(programs, month, model, dice) : null;
  const percents = programs.map((program) => one ?? percentOf([program], month, model, dice));
  const kept = programs.filter((_, index) => percents[index] >= IDLE_PERCENT);
  if (!kept.length) return { state: 'off', programs: [] };
  return {
    state: 'on',
    programs: kept.map((program) => ({ ...program, percent: percents[programs.indexOf(program)], stations: program.stations })),
  };
}

const same = (one, other) =>
  JSON.stringify([one.state, one.programs.map(plain)]) === JSON.stringify([other.state, other.programs.map(plain)]);
const plain = ({ name, days, starts, percent, stations }) => ({ name, days, starts, percent, stations });

/** Facts at visits: what was left, where it changed; sometimes what was found. */
function factsOf(controller, property, visits, dice) {
  const facts = [];
  for (const [index, visit] of visits.entries()) {
    const last = facts.at(-1);
    if (last && dice.uniform() < property.lazy) continue;
    const settings =
      property.setting === 'weather'
        ? { state: 'weather', programs: [] }
        : settingsFor(controller, monthText(dayAt(visit) + 4).slice(5), dice);
    if (last && same(last, settings)) continue;
    if (last && index % 3 === 0) facts.push({ ...last, at: visit - 8, record: 'found' });
    facts.push({ ...settings, at: visit, record: 'left' });
  }
  return facts;
}

function storms(property) {
  const found = [];
  for (const { day, rain } of property.station.days) {
    if (rain < 2.5) continue;
    const last = found.at(-1);
    if (last && day - last.to <= 1) Object.assign(last, { to: day, rain: last.rain + rain });
    else found.push({ from: day, to: day, rain });
  }
  return found.filter(({ rain }) => rain >= PAUSING_MM);
}

/** Pauses from the afternoon before a storm to the second midnight after it; those not set are kept as missed. */
function drawPauses(controller, property, fleet, dice) {
  controller.pauses = [];
  controller.missed = [];
  for (const storm of storms(property)) {
    const set = dice.uniform() < property.pausing;
    if (storm.from <= fleet.from + 1) continue;
    if (set)
      controller.pauses.push({ from: startOfDay(storm.from - 1) + 16 * 60 + dice.whole(0, 5) * 10, until: startOfDay(storm.to + 2) });
    else controller.missed.push(storm);
  }
}

const isPaused = (pauses, minute) => pauses.some((pause) => minute >= pause.from && minute < pause.until);

function wetDays(property) {
  const wet = new Set();
  let before = 0;
  for (const { day, rain } of property.station.days) {
    if (rain + before >= SENSOR_MM) wet.add(day);
    before = rain;
  }
  return wet;
}

function lengthOf(controller, minutes, percent) {
  const adjusted = (minutes * percent) / 100;
  const step = controller.model.minuteStep;
  return step ? Math.round(adjusted / step) * step : adjusted;
}

function runProgram(controller, program, begin, runs) {
  const ended = new Map();
  let clock = begin;
  for (let cycle = 1; cycle <= 4; cycle += 1) {
    for (const { station, minutes, cycles, soak } of program.stations) {
      if (cycle > cycles) continue;
      clock = Math.max(clock, (ended.get(station) ?? clock) + (cycle > 1 ? soak : 0));
      const length = lengthOf(controller, minutes, program.percent) / cycles;
      if (length > 0) runs.push({ zone: controller.zones[station - 1], start: clock, minutes: length });
      clock += length;
      ended.set(station, clock);
    }
  }
  return clock;
}

function runByWeather(controller, day, runs, dice) {
  let clock = startOfDay(day) + 180;
  for (const zone of controller.zones) {
    const minutes = ((zone.need.get(day - 1) ?? 0) * (1 + 0.05 * dice.normal())) / zone.flowGpm;
    if (minutes < 0.5) continue;
    runs.push({ zone, start: clock, minutes });
    clock += minutes;
  }
}

/** Starts of a day in their order, with the settings in force at each. */
function startsOn(controller, day) {
  const due = [];
  for (const minute of controller.clockStarts) {
    const at = startOfDay(day) + minute;
    const fact = controller.facts.findLast((one) => one.at <= at);
    for (const program of fact?.programs ?? [])
      if (startsOf(program).includes(minute) && runsOn(program.days, day) && !isPaused(controller.pauses, at)) due.push({ at, program });
  }
  return due;
}

function runsOf(controller, property, fleet, dice) {
  const runs = [];
  const wet = property.sensor ? wetDays(property) : new Set();
  controller.clockStarts = [...new Set(controller.programs.flatMap(startsOf))].sort((one, other) => one - other);
  let free = 0;
  for (let day = fleet.from; day <= fleet.last; day += 1) {
    if (wet.has(day)) continue;
    if (property.setting === 'weather') runByWeather(controller, day, runs, dice);
    for (const { at, program } of startsOn(controller, day)) free = runProgram(controller, program, Math.max(free, at), runs);
  }
  return runs;
}

/** Gives every controller of a property its model, programs, facts, pauses and the runs that its settings make. */
export function setTimers(property, visits, fleet) {
  for (const controller of property.controllers) {
    const dice = diceFor(`timer ${fleet.seed} ${property.name} ${controller.name}`);
    controller.model = dice.pick(MODELS);
    for (const zone of controller.zones)
      Object.assign(zone, { season: seasonOf(zone), habit: dice.uniform() < 0.1 ? dice.between(0.6, 1.6) : 1 + 0.03 * dice.normal() });
    controller.programs = drawPrograms(controller, dice, fleet.from).slice(0, controller.model.programs);
    for (const program of controller.programs) program.stations = stationsOf(program, property.habit);
    drawPauses(controller, property, fleet, dice);
    controller.facts = factsOf(controller, property, visits, dice);
    // What the first visit found had run before it.
    controller.facts[0].at = startOfDay(fleet.from);
    controller.runs = runsOf(controller, property, fleet, dice);
  }
}
