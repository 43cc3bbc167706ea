// Everything that holds the house: types, lint, arrows, rooms, schema, dead code. Each line names what failed.
import { spawnSync } from 'node:child_process';

const node = (...args) => [process.execPath, args];
const steps = [
  ['generated documents', node('node_modules/@graphql-codegen/cli/cjs/bin.js', '--config', 'apps/web/codegen.ts')],
  ['types', node('node_modules/typescript/bin/tsc', '-b')],
  ['format', node('node_modules/@biomejs/biome/bin/biome', 'format', '.')],
  ['lint', node('node_modules/eslint/bin/eslint.js', '.', '--max-warnings', '0')],
  [
    'arrows',
    node('node_modules/dependency-cruiser/bin/dependency-cruise.mjs', 'apps', 'libs', 'tests', '--config', '.dependency-cruiser.mjs'),
  ],
  ['rooms', node('.ci/rooms.mjs')],
  ['schema', node('--enable-source-maps', 'apps/api/dist/print-schema.js', '--check')],
  ['problems', node('--enable-source-maps', 'apps/api/dist/print-problems.js', '--check')],
  ['dead code', node('node_modules/knip/bin/knip.js')],
];

let failed = 0;
for (const [name, [command, args]] of steps) {
  const begun = Date.now();
  const { status, stdout, stderr } = spawnSync(command, args, { encoding: 'utf8', maxBuffer: 64 << 20 });
  const good = status === 0;
  console.log(`${good ? 'good  ' : 'FAILED'} ${name} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  if (!good) {
    failed += 1;
    console.log(`${stdout}\n${stderr}`.trim());
  }
}
process.exitCode = failed ? 1 : 0;
