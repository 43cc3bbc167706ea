// What somebody changed between the regular visits, right or wrong, as the stories have it.
import { minuteOf } from '../sky/calendar.mjs';

const copy = (settings) => structuredClone(settings);

function applyToStations(program, change, controller) {
  for (const station of program.stations) {
    const zone = controller.zones[station.station - 1];
    if (change.zones && !change.zones.includes(zone.name)) continue;
    station.minutes = Math.max(1, Math.round(station.minutes * change.times));
    station.cycles = Math.min(station.cycles, station.minutes);
  }
}

function applyToPrograms(settings, change, controller) {
  for (const [name, program] of Object.entries(settings.programs)) {
    if (change.program && change.program !== name) continue;
    if (change.starts) program.starts = change.starts;
    if (change.days) program.days = change.days;
    if (change.percent !== undefined) settings.percents[name] = change.percent;
    if (change.times) applyToStations(program, change, controller);
  }
}

/** What was set wrong from the beginning, until the day on which somebody put it right and wrote down what was left. */
function mendedSettings(facts, change, controller) {
  const until = minuteOf(change.until);
  const before = facts.filter((fact) => fact.at < until);
  const mended = { ...copy(before.at(-1)), at: until, record: 'left' };
  const wrong = before.map(copy);
  for (const fact of wrong) applyToPrograms(fact, change, controller);
  return [...wrong, mended, ...facts.filter((fact) => fact.at > until)];
}

/** A change adds its own record and stays in force in every later one; one that has only an end was so from the beginning. */
export function changedSettings(facts, controller) {
  let changed = facts;
  for (const change of controller.history.changes ?? []) {
    if (change.until) {
      changed = mendedSettings(changed, change, controller);
      continue;
    }
    const at = minuteOf(change.at);
    const before = changed.filter((fact) => fact.at < at);
    const after = changed.filter((fact) => fact.at > at);
    const own = { ...copy(before.at(-1)), at, record: change.record ?? 'left' };
    const later = after.map(copy);
    for (const fact of [own, ...later]) applyToPrograms(fact, change, controller);
    changed = [...before, own, ...later];
  }
  return changed;
}
