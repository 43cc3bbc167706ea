// Runs one of the larger proofs: `npm run prove -- NAME`. Each prints its seed and counts.
import { readdirSync } from 'node:fs';
import path from 'node:path';

const room = path.join(import.meta.dirname, 'prove');
const names = readdirSync(room)
  .filter((file) => file.endsWith('.mjs'))
  .map((file) => file.slice(0, -4))
  .sort();
const load = (name) => import(path.join(room, `${name}.mjs`));

const [wish, ...rest] = process.argv.slice(2);
if (wish === '--names-that-read-shared') {
  for (const name of names) if ((await load(name)).readsShared) console.log(name);
} else if (!names.includes(wish)) {
  console.error(`Name one of: ${names.join(', ')}`);
  process.exitCode = 2;
} else {
  const begun = Date.now();
  try {
    console.log(await (await load(wish)).prove(rest));
    console.log(`${wish}: good (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  } catch (problem) {
    console.error(`${wish}: FAILED: ${problem.message}`);
    process.exitCode = 1;
  }
}
