// 50,000 rows of weather, readings and usage through the product's own import: counts, seconds, the process's greatest
// memory, and the same rows again, which must all be the same. `npm run prove -- import-rows 200000` takes another number.
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { withProduct } from '../../apps/api/dist/cli/open-product.js';
import { folderFiles } from '../../apps/api/dist/features/exchange/files/folder-files.js';
import { ImportDeed } from '../../apps/api/dist/features/exchange/import/import-deed.service.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';
import { organizations } from '../../apps/api/dist/platform/identity/organizations/organization.repository.js';
import { world } from '../support/world-of-rows.mjs';

export const readsShared = false;

const ROWS = 50_000;
/** What 50,000 rows may take on two cores. [s] */
const MOST_SECONDS = 30;
const KB_PER_MB = 1024;

const count = (value) => value.toLocaleString('en-US');
const memory = () => `${Math.round(process.resourceUsage().maxRSS / KB_PER_MB)} MB`;

export async function prove([wish] = []) {
  const rows = Number(wish ?? ROWS);
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-rows-'));
  // The database may run as another account than the one that made the folder.
  chmodSync(folder, 0o755);
  try {
    const files = world({ rows, meters: Math.max(10, Math.ceil(rows / 5000)) });
    for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
    return await withProduct(({ app }) => importTwice(app.get(ImportDeed), folder, rows), {
      ...process.env,
      DATA_DIR: path.join(folder, 'data'),
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function importTwice(deed, folder, rows) {
  const by = organizationActor(randomUUID(), 'import');
  const lines = [`${count(rows)} rows; ${memory()} before`];
  const run = async (what, wish) => {
    const begun = performance.now();
    const report = await deed.run(by, await folderFiles(folder), { rows: 'all', ...wish });
    const seconds = (performance.now() - begun) / 1000;
    const sum = (of) => report.files.reduce((total, file) => total + file[of], 0);
    lines.push(
      `${what}: ${count(sum('new'))} new, ${count(sum('changed'))} changed, ${count(sum('same'))} same, ${count(sum('wrong'))} wrong in ${seconds.toFixed(1)} s, ${count(Math.round(report.rows / seconds))} rows/s, ${memory()} at most`,
    );
    return { seconds, sum };
  };
  const first = await run('first', { begin: (tx) => organizations.add(tx, 'Rows') });
  const again = await run('again', {});
  if (first.sum('wrong') || first.sum('new') < rows) throw new Error(`${lines.join('\n')}\nnot every row was new`);
  if (again.sum('same') !== first.sum('new')) throw new Error(`${lines.join('\n')}\nthe same rows were not the same`);
  if (first.seconds > (MOST_SECONDS * rows) / ROWS)
    throw new Error(`${lines.join('\n')}\nslower than ${MOST_SECONDS} s for ${count(ROWS)} rows`);
  return lines.join('\n');
}
