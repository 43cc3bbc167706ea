// Writes the demo's two import folders, the same byte for byte on every run.
//   node apps/api/demo/generate.mjs [--into FOLDER] [--story]
import path from 'node:path';
import { parseArgs } from 'node:util';
import { writeFolder } from './generator/folder.mjs';
import { printStory } from './generator/story.mjs';
import { livingWorld } from './generator/world.mjs';
import { larkspurGrounds } from './generator/worlds/larkspur.mjs';
import { saltbushLandscape } from './generator/worlds/saltbush.mjs';

const { values } = parseArgs({ options: { into: { type: 'string' }, story: { type: 'boolean', default: false } } });
const into = path.resolve(values.into ?? import.meta.dirname);

for (const written of [larkspurGrounds, saltbushLandscape]) {
  const world = livingWorld(written);
  writeFolder(world, into);
  if (values.story) printStory(world, ['2026-08', '2026-09']);
}
