// What the clocks of a time zone show, asked of the platform's own calendar (Intl): another way than the product's.

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const LOOK_EVERY = 6 * HOUR;
/** No zone is further from UTC. */
const FURTHEST = 15 * HOUR;

const formats = new Map();
function format(zone) {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  formats.set(zone, made);
  return made;
}

/** The wall time of an instant, as if it were UTC. [ms] */
export function wallAt(zone, instant) {
  const part = Object.fromEntries(
    format(zone)
      .formatToParts(instant)
      .map(({ type, value }) => [type, Number(value)]),
  );
  return Date.UTC(part.year, part.month - 1, part.day, part.hour, part.minute, part.second);
}

const offsetAt = (zone, instant) => wallAt(zone, instant) - instant;

/** The local date of an instant. */
export const dateAt = (zone, instant) => new Date(wallAt(zone, instant)).toISOString().slice(0, 10);

/** The least multiple of a minute above `low` that passes; `high` does. */
function first(low, high, passes) {
  let [below, above] = [low / MINUTE, high / MINUTE];
  while (above - below > 1) {
    const middle = Math.floor((below + above) / 2);
    if (passes(middle * MINUTE)) above = middle;
    else below = middle;
  }
  return above * MINUTE;
}

/** The instants between two at which the clocks of a zone are moved, and by how much. [ms] */
export function changesOf(zone, from, until) {
  const changes = [];
  for (let at = from; at < until; at += LOOK_EVERY) {
    const before = offsetAt(zone, at);
    const shift = offsetAt(zone, at + LOOK_EVERY) - before;
    if (shift !== 0) changes.push({ at: first(at, at + LOOK_EVERY, (instant) => offsetAt(zone, instant) !== before), shift });
  }
  return changes;
}

/** The first instant of a local date. [ms] */
export function startOfDate(zone, date) {
  const middle = Date.parse(`${date}T00:00Z`);
  return first(middle - FURTHEST, middle + FURTHEST, (instant) => dateAt(zone, instant) >= date);
}

/** The offset from UTC of an instant, as ISO 8601 writes it. */
export function offsetTextAt(zone, instant) {
  const minutes = offsetAt(zone, instant) / MINUTE;
  const size = Math.abs(minutes);
  const two = (value) => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
