// The built product on a database of its own, in a folder that is removed in the end. For proofs and benchmarks.
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { withProduct } from '../../../apps/api/dist/cli/open-product.js';

/** Writes files into the product's folder and does work with it; `admin` is a connection of the tables' owner. */
export async function inTemporaryProduct(files, work) {
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-bench-'));
  // The database may run as another account than the one that made the folder.
  chmodSync(folder, 0o755);
  try {
    const written = path.join(folder, 'files');
    mkdirSync(written);
    for (const [name, text] of Object.entries(files)) writeFileSync(path.join(written, name), text);
    const environment = { ...process.env, DATA_DIR: path.join(folder, 'data') };
    delete environment.DATABASE_URL;
    return await withProduct(async (product) => {
      const admin = new pg.Client({ connectionString: product.database.adminUrl });
      await admin.connect();
      try {
        return await work({ ...product, admin, folder: written });
      } finally {
        await admin.end();
      }
    }, environment);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
