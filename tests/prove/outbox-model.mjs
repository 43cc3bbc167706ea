// 100,000 random histories of phones, a line that cuts, a server and an office: no acknowledged record lost or doubled, the phones converge,
// every conflict is seen. The histories and what must hold are those of tests/web/offline; `npm test` runs a hundredth.
import { spawnSync } from 'node:child_process';
import path from 'node:path';

const top = path.resolve(import.meta.dirname, '../..');
const HISTORIES = 100_000;

export const readsShared = false;

export async function prove([count = String(HISTORIES)] = []) {
  const tool = path.join(top, 'node_modules/vitest/vitest.mjs');
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [tool, 'run', '--project', 'web', 'tests/web/offline/outbox-model.spec.ts'],
    {
      cwd: top,
      encoding: 'utf8',
      maxBuffer: 64 << 20,
      env: { ...process.env, RILLBOOK_HISTORIES: count },
    },
  );
  if (status !== 0) throw new Error(`${stdout}\n${stderr}`);
  return `${count} histories: nothing lost, nothing doubled, all phones converge, every conflict seen`;
}
