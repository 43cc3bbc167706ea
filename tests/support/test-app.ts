import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { DataSource } from 'typeorm';
import { makeApplication } from '../../apps/api/src/application.js';
import { entities } from '../../apps/api/src/entities.js';
import { appDataSource } from '../../apps/api/src/platform/database/data-source.js';
import type { Role } from '../../apps/api/src/platform/database/actor.js';
import { Jobs } from '../../apps/api/src/platform/jobs/jobs.js';
import { drainQueue } from '../../apps/api/src/platform/jobs/worker.js';
import { type TestDatabase, cloneDatabase } from './test-database.js';

/** A GraphQL answer as it came over the wire. */
export interface Answer {
  readonly status: number;
  // biome-ignore lint/suspicious/noExplicitAny: the shape is the test's own query
  readonly data: any;
  readonly errors: { message: string; path?: (string | number)[]; extensions: { code: string; details: Record<string, unknown> } }[];
}

/** Somebody who may ask. */
export interface Somebody {
  readonly personId: string;
  readonly memberId: string;
  readonly organizationId: string;
  readonly cookie: string;
  readonly email: string;
  /** sends a GraphQL document as this person */
  send(query: string, variables?: Record<string, unknown>): Promise<Answer>;
}

/** The whole product on a database of its own, listening on a port of its own. */
export interface TestApp {
  readonly app: NestExpressApplication;
  readonly source: DataSource;
  readonly database: TestDatabase;
  readonly url: string;
  organization(name?: string): Promise<string>;
  /** a new person with a role in an organization, signed in */
  somebody(organizationId: string, role: Role, clientId?: string): Promise<Somebody>;
  /** a stranger's GraphQL request, or one with a cookie */
  send(query: string, variables?: Record<string, unknown>, cookie?: string): Promise<Answer>;
  /** does all background work that waits */
  drain(): Promise<void>;
  close(): Promise<void>;
}

/** Starts the product for a test file. */
export async function startApp(): Promise<TestApp> {
  const database = await cloneDatabase();
  const source = await appDataSource(database.appUrl, entities).initialize();
  const app = await makeApplication(source);
  const server = (await app.listen(0, '127.0.0.1')) as { address(): { port: number } };
  const url = `http://127.0.0.1:${server.address().port}`;

  const send = async (query: string, variables: Record<string, unknown> = {}, cookie?: string): Promise<Answer> => {
    const response = await fetch(`${url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...(cookie && { cookie }) },
      body: JSON.stringify({ query, variables }),
    });
    const body = (await response.json()) as { data?: unknown; errors?: Answer['errors'] };
    return { status: response.status, data: body.data ?? null, errors: body.errors ?? [] };
  };

  const organization = async (name = `Organization ${randomUUID().slice(0, 8)}`): Promise<string> =>
    (await database.admin<{ id: string }>('insert into organization (name) values ($1) returning id', [name]))[0]!.id;

  const somebody = async (organizationId: string, role: Role, clientId?: string): Promise<Somebody> => {
    const email = `${role.toLowerCase()}-${randomBytes(4).toString('hex')}@example.test`;
    const [person] = await database.admin<{ id: string }>('insert into person (email, name) values ($1, $2) returning id', [
      email,
      `The ${role}`,
    ]);
    const [member] = await database.admin<{ id: string }>(
      'insert into member (organization_id, person_id, role, client_id) values ($1, $2, $3, $4) returning id',
      [organizationId, person!.id, role, clientId ?? null],
    );
    const token = randomBytes(32).toString('base64url');
    await database.admin(
      `insert into session (token_hash, person_id, organization_id, expires_at) values ($1, $2, $3, now() + interval '1 day')`,
      [createHash('sha256').update(token).digest(), person!.id, organizationId],
    );
    const cookie = `rillbook=${token}`;
    return {
      personId: person!.id,
      memberId: member!.id,
      organizationId,
      cookie,
      email,
      send: (query, variables) => send(query, variables, cookie),
    };
  };

  return {
    app,
    source,
    database,
    url,
    organization,
    somebody,
    send,
    drain: () => drainQueue(database.adminUrl, app.get(Jobs)),
    close: async () => {
      await app.close();
      await source.destroy();
      await database.drop();
    },
  };
}
