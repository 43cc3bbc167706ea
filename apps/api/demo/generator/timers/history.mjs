// The dated settings of one controller, from the summer of 2025 to the last visit: found, left, planned.
import { minuteOf } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';
import { changedSettings } from './changes.mjs';
import { exactMinutes, monthNeed, startsInMonth, stationOf, usualMinutes } from './run-times.mjs';

const SHOULDER = new Set(['03', '04', '10', '11']);
const WINTER = new Set(['12', '01', '02']);
const seasonOf = (month, history) => (SHOULDER.has(month.slice(5)) && !history.sameAllYear ? 'shoulder' : 'summer');

const off = { state: 'off', programs: {}, percents: {} };

function programsFor(controller, season, minutesOf) {
  const programs = {};
  for (const [name, written] of Object.entries(controller.programs)) {
    const zones = controller.zones.filter((zone) => zone.program === name);
    if (zones.length === 0) continue;
    const program = { days: season === 'shoulder' ? (written.shoulder ?? written.days) : written.days, starts: written.starts };
    programs[name] = { ...program, stations: zones.map((zone) => stationOf(zone, minutesOf(zone, program))) };
  }
  return programs;
}

function gallonsAStart(controller, program) {
  return program.stations.reduce((sum, { station, minutes }) => sum + minutes * controller.zones[station - 1].flowGpm, 0);
}

/** The percent that makes a program (or several that share one percent) meet a month's need. */
function percentFor(controller, programs, month) {
  let needed = 0;
  let run = 0;
  for (const program of programs) {
    const zones = program.stations.map(({ station }) => controller.zones[station - 1]);
    needed += monthNeed(
      zones.filter((zone) => zone.times === 1),
      month,
    );
    const honest = { stations: program.stations.filter(({ station }) => controller.zones[station - 1].times === 1) };
    run += gallonsAStart(controller, honest) * startsInMonth(program, month, controller.pauses);
  }
  return run === 0 ? 100 : (100 * needed) / run;
}

function byPercent(controller, month, dice) {
  const programs = programsFor(controller, seasonOf(month, controller.history), (zone, program) =>
    usualMinutes(zone, program, seasonOf(month, controller.history)),
  );
  const step = controller.model.adjustStep;
  const round = (percent) => Math.min(controller.model.adjustMost, Math.round((percent * (1 + 0.015 * dice.normal())) / step) * step);
  const names = Object.keys(programs);
  const one = controller.model.adjustScope === 'controller' ? round(percentFor(controller, Object.values(programs), month)) : null;
  const percents = Object.fromEntries(names.map((name) => [name, one ?? round(percentFor(controller, [programs[name]], month))]));
  return Object.values(percents).every((percent) => percent < 15) ? off : { state: 'on', ...withoutIdle(programs, percents) };
}

/** A program that the month hardly needs is switched off, not set to two percent. */
function withoutIdle(programs, percents) {
  const busy = Object.keys(programs).filter((name) => percents[name] >= 10);
  const only = (record) => Object.fromEntries(busy.map((name) => [name, record[name]]));
  return { programs: only(programs), percents: only(percents) };
}

function byMinutes(controller, month) {
  const season = seasonOf(month, controller.history);
  const usual = programsFor(controller, season, (zone, program) => usualMinutes(zone, program, season));
  if (percentFor(controller, Object.values(usual), month) < 15) return off;
  const programs = programsFor(controller, season, (zone, program) => exactMinutes(zone, program, month, controller.pauses));
  return { state: 'on', programs, percents: Object.fromEntries(Object.keys(programs).map((name) => [name, 100])) };
}

function settingsFor(controller, month, dice) {
  const { style = 'percent', fixedPercent, monthly } = controller.history;
  if (WINTER.has(month.slice(5))) return off;
  if (style === 'minutes') return byMinutes(controller, month);
  const settings = byPercent(controller, month, dice);
  if (fixedPercent === undefined && !monthly) return settings;
  const programs = programsFor(controller, 'summer', (zone, program) => usualMinutes(zone, program, 'summer'));
  const percent = monthly ? null : fixedPercent;
  return { state: 'on', programs, percents: Object.fromEntries(Object.keys(programs).map((name) => [name, percent])) };
}

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/** What a visit writes down: as found when the crew notes it, as left when it changed something. */
function recordsOf(visit, settings, last, dice) {
  const records = [];
  const looked = dice.uniform() < 0.45;
  if (last && (looked || settings === null)) records.push({ at: visit.at - dice.whole(6, 14), record: 'found', ...last });
  if (settings !== null && !same(settings, last)) records.push({ at: visit.at, record: 'left', ...settings });
  return records;
}

function visitSettings(controller, visit, dice, last) {
  const { stopAfter = '9999', weatherFrom = '9999' } = controller.history;
  if (visit.month === null || visit.at > minuteOf(stopAfter === '9999' ? '2999-01-01T00:00' : stopAfter)) return null;
  if (weatherFrom !== '9999' && visit.at >= minuteOf(weatherFrom)) return { state: 'weather', programs: {}, percents: {} };
  const settings = settingsFor(controller, visit.month, dice);
  return same(settings, last) ? null : settings;
}

/**
 * @param controller with its zones, their needs, its pauses and its written history
 * @param property its visits
 * @returns settings facts in order
 */
export function historyOf(controller, property) {
  const dice = diceFor(`history ${property.name} ${controller.name}`);
  const facts = [];
  let last = null;
  for (const visit of property.visits) {
    const settings = visitSettings(controller, visit, dice, last);
    const quiet = settings === null && dice.uniform() < 0.4 && visit.month !== null;
    if (!quiet) facts.push(...recordsOf(visit, settings, last, dice));
    if (settings !== null) last = settings;
  }
  return changedSettings(facts, controller);
}

/** Settings a careful crew would plan for the next visit: never replayed. */
export function plannedFor(controller, { at, days }, month) {
  const zones = controller.zones.map((zone) => ({ ...zone, times: 1 }));
  const programs = Object.fromEntries(
    Object.entries(controller.programs).map(([name, program]) => [name, { ...program, days: days[name] }]),
  );
  return { at: minuteOf(at), record: 'planned', ...byMinutes({ ...controller, zones, programs }, month) };
}
