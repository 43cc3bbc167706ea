import { loadDemo } from './features/exchange/demo/load-demo.service.js';
import { mailWarnings } from './features/reports/posting/mail-settings.js';
import { appDataSource } from './platform/database/data-source.js';
import { type DatabaseAddress, findDatabase } from './platform/database/database-url.js';
import { migrate } from './platform/database/migrate.js';
import { StartProblem } from './platform/database/start-problem.js';
import { Jobs } from './platform/jobs/jobs.js';
import { startWorker } from './platform/jobs/worker.js';
import { makeApplication } from './application.js';
import { entities } from './entities.js';

const PORT = 3000;

/** The port that was wished, before anything is started; 0 takes any that is free. */
function wishedPort(): number {
  const wish = process.env['PORT'] || String(PORT);
  const port = Number(wish);
  if (!(Number.isInteger(port) && port >= 0 && port < 65_536))
    throw new StartProblem(`PORT is "${wish}". Set it to a number from 0 to 65535, or leave it out.`);
  return port;
}

async function start(): Promise<void> {
  const port = wishedPort();
  const database = await findDatabase(process.env);
  try {
    await serve(database, port);
  } catch (problem) {
    // Nothing of ours stays behind a start that failed.
    await database.close();
    throw problem;
  }
}

async function serve(database: DatabaseAddress, port: number): Promise<void> {
  await migrate(database.adminUrl, database.appUrl);
  const source = await appDataSource(database.appUrl, entities).initialize();
  const app = await makeApplication(source);
  const worker = await startWorker(database.adminUrl, app.get(Jobs));
  const server = await app.listen(port, process.env['HOST'] || '127.0.0.1');

  let ending = false;
  const end = async (): Promise<void> => {
    if (ending) return;
    ending = true;
    await worker.stop();
    await app.close();
    await source.destroy();
    await database.close();
    process.exit(0);
  };
  process.on('SIGTERM', () => void end());
  process.on('SIGINT', () => void end());

  await loadDemo(app, database).catch((problem: unknown) => console.error('The demonstration could not be loaded:', problem));
  for (const warning of mailWarnings()) console.warn(warning);
  const address = (server as { address(): { port: number } }).address();
  console.log(`Rillbook is at http://localhost:${address.port}  (${database.says})`);
}

/** What a person can do something about is said in a sentence; the rest with its stack. */
function said(problem: unknown): unknown {
  if (problem instanceof StartProblem) return problem.message;
  const { code, port } = problem as NodeJS.ErrnoException & { port?: number };
  return code === 'EADDRINUSE' ? `Port ${port} is taken by another program. Set PORT to another number, or end that program.` : problem;
}

start().catch((problem: unknown) => {
  console.error(said(problem));
  process.exit(1);
});
