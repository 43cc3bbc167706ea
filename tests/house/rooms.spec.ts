import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';

const { breaches } = (await import('../../.ci/rooms.mjs' as string)) as { breaches: (room: string) => string[] };

let house: string;

beforeEach(() => {
  house = mkdtempSync(path.join(tmpdir(), 'rillbook-rooms-'));
});
afterEach(() => rmSync(house, { recursive: true, force: true }));

function furnish(room: string, things: number): void {
  mkdirSync(path.join(house, room), { recursive: true });
  for (let n = 0; n < things; n += 1) writeFileSync(path.join(house, room, `thing-${n}.ts`), '');
}

it('lets a room hold twelve things, four doors in', () => {
  furnish('a/b/c/d', 12);
  expect(breaches(house)).toEqual([]);
});

it('answers a room of thirteen things, and says what to do', () => {
  furnish('a', 13);
  expect(breaches(house)).toEqual([`${path.join(house, 'a')} holds 13 things (at most 12). Divide it by noun or verb.`]);
});

it('answers a room five doors in', () => {
  furnish('a/b/c/d/e', 1);
  expect(breaches(house)).toEqual([`${path.join(house, 'a/b/c/d/e')} is 5 doors in (at most 4). Bring it nearer.`]);
});

it('lets migrations and generated things be many', () => {
  furnish('migrations', 40);
  furnish('__generated__', 40);
  expect(breaches(house)).toEqual([]);
});

it.each(['utils', 'helpers.ts', 'common', 'misc-things.ts', 'Helper.tsx'])('answers the name %s, which says nothing', (name) => {
  furnish(`a/${name}`, 0);
  expect(breaches(house)).toEqual([`${path.join(house, 'a', name)}: name it after what it holds, not "${name.split('.')[0]}".`]);
});
