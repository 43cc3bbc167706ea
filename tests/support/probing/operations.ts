import type { INestApplication } from '@nestjs/common';
import { ModulesContainer } from '@nestjs/core';
import { GraphQLSchemaHost } from '@nestjs/graphql';
import type { GraphQLField, GraphQLSchema } from 'graphql';
import { ALLOW, PUBLIC } from '../../../apps/api/src/platform/identity/allow.js';
import type { Permission } from '../../../apps/api/src/platform/identity/permission.js';

/** A query or mutation of the running product, and what its resolver says of who may ask. */
export interface Operation {
  readonly kind: 'query' | 'mutation';
  readonly name: string;
  readonly field: GraphQLField<unknown, unknown>;
  readonly permission: Permission | undefined;
  /** why it is open to strangers */
  readonly reason: string | undefined;
}

// Where Nest keeps what @Query and @Mutation say of a method.
const TYPE = 'graphql:resolver_type';
const NAME = 'graphql:resolver_name';

interface Handler {
  readonly kind: string;
  readonly name: string;
  readonly permission: Permission | undefined;
  readonly reason: string | undefined;
}

function* methodsOf(instance: object): Generator<readonly [name: string, method: object]> {
  for (
    let proto = Object.getPrototypeOf(instance) as object;
    proto && proto !== Object.prototype;
    proto = Object.getPrototypeOf(proto) as object
  )
    for (const name of Object.getOwnPropertyNames(proto)) {
      const method: unknown = Object.getOwnPropertyDescriptor(proto, name)?.value;
      if (typeof method === 'function') yield [name, method];
    }
}

function handlersOf(instance: object): Handler[] {
  const handlers: Handler[] = [];
  for (const [name, method] of methodsOf(instance)) {
    const kind = Reflect.getMetadata(TYPE, method) as string | undefined;
    if (kind !== 'Query' && kind !== 'Mutation') continue;
    const from = (key: string): unknown => Reflect.getMetadata(key, method) ?? Reflect.getMetadata(key, instance.constructor);
    handlers.push({
      kind: kind.toLowerCase(),
      name: (Reflect.getMetadata(NAME, method) as string | undefined) ?? name,
      permission: from(ALLOW) as Permission | undefined,
      reason: from(PUBLIC) as string | undefined,
    });
  }
  return handlers;
}

export const schemaOf = (app: INestApplication): GraphQLSchema => app.get(GraphQLSchemaHost).schema;

/** Every operation of the schema; the list comes from the running product, so that a new one is in it the day it is written. */
export function operationsOf(app: INestApplication): Operation[] {
  const instances = [...app.get(ModulesContainer).values()]
    .flatMap((module) => [...module.providers.values()].map((provider) => provider.instance as unknown))
    .filter((instance): instance is object => typeof instance === 'object' && instance !== null);
  const handlers = new Map(instances.flatMap(handlersOf).map((handler) => [`${handler.kind} ${handler.name}`, handler]));
  const schema = schemaOf(app);
  const roots = [
    ['query', schema.getQueryType()],
    ['mutation', schema.getMutationType()],
  ] as const;
  return roots.flatMap(([kind, type]) =>
    Object.values(type?.getFields() ?? {}).map((field) => {
      const handler = handlers.get(`${kind} ${field.name}`);
      return { kind, name: field.name, field, permission: handler?.permission, reason: handler?.reason };
    }),
  );
}
