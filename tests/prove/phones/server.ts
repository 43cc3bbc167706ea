import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import pg from 'pg';
import { findDatabase } from '../../../apps/api/src/platform/database/database-url.js';

const main = path.resolve(import.meta.dirname, '../../../apps/api/dist/main.js');

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  server.close();
  await once(server, 'close');
  return port;
}

/** The built product with its demonstration, which can be killed as a power cut would: its database runs on beside it. */
export class KillableProduct {
  private child: ChildProcess | null = null;
  private readonly pool: pg.Pool;

  private constructor(
    readonly url: string,
    private readonly folder: string,
    private readonly environment: NodeJS.ProcessEnv,
    private readonly database: Awaited<ReturnType<typeof findDatabase>>,
  ) {
    this.pool = new pg.Pool({ connectionString: database.adminUrl, max: 4 });
  }

  static async start(): Promise<KillableProduct> {
    const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-proof-'));
    // The database's own account must be able to enter it.
    chmodSync(folder, 0o755);
    const port = await freePort();
    const { DATABASE_URL: _, ...inherited } = process.env;
    const environment = { ...inherited, DATA_DIR: path.join(folder, 'data'), PORT: String(port), RILLBOOK_DEMO: 'yes' };
    const database = await findDatabase(environment);
    const product = new KillableProduct(`http://localhost:${port}`, folder, environment, database);
    await product.begin();
    return product;
  }

  /** Starts it again, on the same address. */
  async begin(): Promise<void> {
    const child = spawn(process.execPath, [main], { env: this.environment, stdio: ['ignore', 'pipe', 'pipe'] });
    this.child = child;
    let said = '';
    // What it did not foresee is seen where the proof is watched.
    createInterface(child.stdout!).on('line', (line) => line.includes('"unforeseen"') && process.stderr.write(`${line}\n`));
    await new Promise<void>((resolve, reject) => {
      const listen = (piece: Buffer): void => {
        said += piece.toString();
        if (said.includes('Rillbook is at')) resolve();
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      child.once('exit', (code) => reject(new Error(`the product ended with ${code}:\n${said}`)));
    });
    child.removeAllListeners('exit');
  }

  /** Ends it between two instructions; nothing is said to anybody. */
  async kill(): Promise<void> {
    const child = this.child;
    if (!child) return;
    this.child = null;
    const ended = child.exitCode === null && child.signalCode === null ? once(child, 'exit') : null;
    child.kill('SIGKILL');
    await ended;
  }

  async sql<Row extends pg.QueryResultRow>(statement: string, parameters: unknown[] = []): Promise<Row[]> {
    return (await this.pool.query<Row>(statement, parameters)).rows;
  }

  async stop(): Promise<void> {
    await this.kill();
    await this.pool.end();
    await this.database.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
