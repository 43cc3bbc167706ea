// A fleet through the built product: its own command lines, on a database of its own, with the organization's calendar at the fleet's last day.
import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';

const dist = path.resolve(import.meta.dirname, '../../../../apps/api/dist');
const NAME = 'Fleet';
const MOST_OUTPUT = 256 << 20;

/** Loaded only when a fleet is run: scoring alone needs no build. */
const open = async () => (await import(path.join(dist, 'cli/open-product.js'))).withProduct;

async function beginOn(day, environment) {
  const withProduct = await open();
  await withProduct(async ({ database }) => {
    const admin = new pg.Client({ connectionString: database.adminUrl });
    await admin.connect();
    try {
      const id = randomUUID();
      await admin.query('begin');
      await admin.query(`select set_config('app.organization_id', $1, true)`, [id]);
      await admin.query('insert into organization (id, name, stands_still_on) values ($1, $2, $3)', [id, NAME, day]);
      await admin.query('commit');
    } finally {
      await admin.end();
    }
  }, environment);
}

function command(environment, ...words) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--enable-source-maps', path.join(dist, 'cli.js'), ...words], {
    ...{ env: environment, encoding: 'utf8', maxBuffer: MOST_OUTPUT },
  });
  if (status !== 0) throw new Error(`${words[0]} ended with ${status}:\n${stdout.slice(-4000)}\n${stderr.slice(-4000)}`);
  return stdout;
}

const csvIn = (folder) =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((file) => file.endsWith('.csv'))
      .map((file) => [file, readFileSync(path.join(folder, file), 'utf8')]),
  );

/**
 * Imports a folder, computes, exports; rows that come twice in a feed are refused and the others taken, as an office would choose.
 *
 * @param {string} folder the import folder
 * @param {string} lastDay YYYY-MM-DD, the organization's today
 * @returns the exported files by name, what the import said, and how long each took [s]
 */
export async function throughProduct(folder, lastDay) {
  const room = mkdtempSync(path.join(tmpdir(), 'rillbook-fleet-'));
  // The database may run as another account than the one that made the folder.
  chmodSync(room, 0o755);
  const { DATABASE_URL: _, ...inherited } = process.env;
  const environment = { ...inherited, DATA_DIR: path.join(room, 'data'), RILLBOOK_DEMO: 'no' };
  const seconds = {};
  const timed = async (what, work) => {
    const begun = performance.now();
    const result = await work();
    seconds[what] = (performance.now() - begun) / 1000;
    return result;
  };
  try {
    await timed('begin', () => beginOn(lastDay, environment));
    const said = await timed('import', () => command(environment, 'import', folder, '--organization', NAME, '--good-rows'));
    const out = path.join(room, 'out');
    await timed('export', () => command(environment, 'export', out, '--organization', NAME));
    return { exported: csvIn(out), said, seconds };
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}
