// Counts what stands in each room: twelve things at most, four doors deep at most.
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';

const MOST_THINGS = 12;
const DEEPEST = 4;
const EXEMPT = /[\\/](migrations|__generated__)$/;
const FORBIDDEN = /^(utils?|helpers?|common|misc)([.-]|$)/i;

/**
 * Walks one house and collects what breaks the measures.
 * @param {string} room the folder
 * @param {number} depth doors from the house's front
 * @returns {string[]} one sentence per breach
 */
export function breaches(room, depth = 0) {
  const things = readdirSync(room, { withFileTypes: true });
  const found = [];
  if (!EXEMPT.test(room) && things.length > MOST_THINGS)
    found.push(`${room} holds ${things.length} things (at most ${MOST_THINGS}). Divide it by noun or verb.`);
  if (depth > DEEPEST) found.push(`${room} is ${depth} doors in (at most ${DEEPEST}). Bring it nearer.`);
  for (const thing of things) {
    if (FORBIDDEN.test(thing.name))
      found.push(`${path.join(room, thing.name)}: name it after what it holds, not "${thing.name.split('.')[0]}".`);
    if (thing.isDirectory()) found.push(...breaches(path.join(room, thing.name), depth + 1));
  }
  return found;
}

const houses = [
  'apps/api/src',
  'apps/web/src',
  ...['units', 'agronomy', 'irrigation', 'metering', 'routing', 'showing'].map((lib) => `libs/${lib}/src`),
];
if (process.argv[1] === import.meta.filename) {
  const all = houses.filter((house) => existsSync(house)).flatMap((house) => breaches(house));
  for (const line of all) console.error(line);
  if (all.length) process.exitCode = 1;
  else console.log('rooms: every room holds its measure');
}
