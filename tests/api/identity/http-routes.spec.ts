import { RequestMethod } from '@nestjs/common';
import { ModulesContainer } from '@nestjs/core';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ALLOW, PUBLIC } from '../../../apps/api/src/platform/identity/allow.js';
import { type Permission, roleIncludes } from '../../../apps/api/src/platform/identity/permission.js';
import { ROLES } from '../../../apps/api/src/platform/database/actor.js';
import { plant, type Planted } from '../../support/planting/plant.js';
import { startApp, type TestApp } from '../../support/test-app.js';

// The same as the probes of GraphQL, for every route of HTTP (OWASP ASVS 5.0, 8.2.1 and 8.4.1). The list comes from the running product.

interface Route {
  readonly method: string;
  readonly path: string;
  readonly permission: Permission | undefined;
  readonly reason: string | undefined;
}

/** Routes that are open to strangers, each with its reason. */
const FOR_STRANGERS: Readonly<Record<string, string>> = {
  '/health': 'a container asks before anybody can sign in',
  '/api/shared/:shareToken': 'the link is its own key: to one report, until it ends or is taken back',
  '/api/shared/:shareToken/:reportFile': 'the same, as a file',
  '/api/shared/:shareToken/question': 'whoever has the link may ask about its report, twenty times a day',
  '/api/stop-reports/:stopToken': 'whoever got the mail may say that they want no more',
};

// Where Nest keeps what @Controller, @Get and their like say.
const PATH = 'path';
const METHOD = 'method';

let product: TestApp;
let routes: Route[];
let theirs: Planted;
let ours: Planted;

function routesOf(instance: object): Route[] {
  const at = Reflect.getMetadata(PATH, instance.constructor) as string;
  const proto = Object.getPrototypeOf(instance) as object;
  return Object.getOwnPropertyNames(proto).flatMap((name) => {
    const method: unknown = Object.getOwnPropertyDescriptor(proto, name)?.value;
    if (typeof method !== 'function' || Reflect.getMetadata(METHOD, method) === undefined) return [];
    const from = (key: string): unknown => Reflect.getMetadata(key, method) ?? Reflect.getMetadata(key, instance.constructor);
    const path = [at, Reflect.getMetadata(PATH, method) as string]
      .map((part) => part.replace(/^\/|\/$/g, ''))
      .filter(Boolean)
      .join('/');
    return [
      {
        method: RequestMethod[Reflect.getMetadata(METHOD, method) as number]!,
        path: `/${path}`,
        permission: from(ALLOW) as Permission | undefined,
        reason: from(PUBLIC) as string | undefined,
      },
    ];
  });
}

beforeAll(async () => {
  product = await startApp();
  const controllers = [...product.app.get(ModulesContainer).values()].flatMap((module) =>
    [...module.controllers.values()].map((one) => one.instance as object),
  );
  routes = controllers.flatMap(routesOf);
  theirs = await plant(product.database, 'planted-theirs');
  ours = await plant(product.database, 'planted-ours');
});
afterAll(() => product.close());

/** What a response says; of a stream that never ends, what it begins with. */
async function textOf(response: Response): Promise<string> {
  if (!response.headers.get('content-type')?.startsWith('text/event-stream')) return response.text();
  const reader = response.body!.getReader();
  const { value } = await reader.read();
  await reader.cancel();
  return new TextDecoder().decode(value);
}

/** Asks a route with ids of the other organization in all its places. */
async function ask(route: Route, cookie?: string): Promise<{ status: number; text: string; code: string }> {
  const path = route.path.replaceAll(/:(\w+)/g, (_, name: string) =>
    name === 'file' ? 'clients' : (theirs.ids[name.replace(/Id$/, '')] ?? randomUUID()),
  );
  const response = await fetch(`${product.url}${path}`, {
    method: route.method,
    headers: { ...(cookie && { cookie }), 'content-type': 'application/json' },
    ...(route.method === 'GET' ? {} : { body: '{}' }),
  });
  const text = await textOf(response);
  const [, code = ''] = /"code":"(\w+)"/.exec(text) ?? [];
  return { status: response.status, text, code };
}

it('every route names its permission, or why it is public', () => {
  expect(routes.length).toBeGreaterThan(0);
  expect(routes.filter((route) => !route.permission && !route.reason).map((route) => route.path)).toEqual([]);
  expect([...new Set(routes.filter((route) => route.reason).map((route) => route.path))].sort()).toEqual(Object.keys(FOR_STRANGERS).sort());
});

it('a stranger is asked to sign in', async () => {
  for (const route of routes.filter((one) => !one.reason))
    expect(await ask(route), route.path).toMatchObject({ status: 401, code: 'SIGN_IN_NEEDED' });
});

it.each(ROLES)("another organization's %s sees nothing of the first, and is refused what the role does not include", async (role) => {
  for (const route of routes) {
    const { cookie } = await product.somebody(ours.organizationId, role, role === 'client' ? ours.ids['client'] : undefined);
    const { status, text, code } = await ask(route, cookie);
    const what = `${role}: ${route.method} ${route.path}`;
    expect(text, what).not.toContain(theirs.marker);
    if (route.permission && !roleIncludes(role, route.permission)) expect([what, status, code]).toEqual([what, 403, 'NOT_ALLOWED']);
    else expect([what, code === 'UNFORESEEN', status === 401], what).toEqual([what, false, false]);
  }
});
