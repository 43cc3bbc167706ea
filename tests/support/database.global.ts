import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { applicationUrl } from '../../apps/api/src/platform/database/database-url.js';
import { startEmbedded } from '../../apps/api/src/platform/database/embedded/supervisor.js';
import { migrate } from '../../apps/api/src/platform/database/migrate.js';

/** The database that each test file clones. */
export const TEMPLATE = 'rillbook_template';

declare module 'vitest' {
  export interface ProvidedContext {
    /** administrative address of the test server */
    adminUrl: string;
  }
}

interface Server {
  readonly adminUrl: string;
  stop(): Promise<void>;
}

/** A container when an engine answers; the embedded server otherwise, unless REQUIRE_DOCKER forbids it. */
async function aServer(): Promise<Server> {
  const given = process.env['TEST_DATABASE_URL'];
  if (given) return { adminUrl: given, stop: async () => undefined };
  if (await dockerAnswers()) {
    const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
    const container = await new PostgreSqlContainer('postgres:18-alpine').start();
    return { adminUrl: container.getConnectionUri(), stop: async () => void (await container.stop()) };
  }
  if (process.env['REQUIRE_DOCKER']) throw new Error('REQUIRE_DOCKER is set and no Docker engine answers.');
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-test-'));
  const engine = await startEmbedded({ folder, ephemeral: true });
  return {
    adminUrl: engine.url,
    stop: async () => {
      await engine.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function dockerAnswers(): Promise<boolean> {
  const { createConnection } = await import('node:net');
  const socket = (process.env['DOCKER_HOST'] ?? 'unix:///var/run/docker.sock').replace('unix://', '');
  return new Promise((resolve) => {
    const probe = createConnection(socket, () => {
      probe.end();
      resolve(true);
    });
    probe.on('error', () => resolve(false));
  });
}

/** Starts the server once a run and migrates the template. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await aServer();
  const admin = new pg.Client({ connectionString: server.adminUrl });
  await admin.connect();
  await admin.query(`drop database if exists ${TEMPLATE} with (force)`);
  await admin.query(`create database ${TEMPLATE}`);
  await admin.end();
  const template = new URL(server.adminUrl);
  template.pathname = `/${TEMPLATE}`;
  await migrate(template.toString(), applicationUrl(template.toString()));
  project.provide('adminUrl', server.adminUrl);
  return () => server.stop();
}
