import { readFileSync } from 'node:fs';
import path from 'node:path';
import { buildSchema, type DocumentNode, Kind, parse, validate, visit } from 'graphql';
import { expect, it } from 'vitest';
import { limitsRule } from '../../../apps/api/src/platform/graphql/limits.js';

const top = path.resolve(import.meta.dirname, '../../..');
const GENERATED = readFileSync(path.join(top, 'apps/web/src/graphql/__generated__/graphql.ts'), 'utf8');
const DOCUMENT = /export const (\w+)Document = (\{.*\}) as unknown as DocumentNode/g;

/** As the pages' client sends it: each thing names its type. */
const asSent = (document: DocumentNode): DocumentNode =>
  visit(document, {
    SelectionSet(set, _key, parent) {
      if (parent && 'kind' in parent && parent.kind === Kind.OPERATION_DEFINITION) return undefined;
      return { ...set, selections: [...set.selections, { kind: Kind.FIELD, name: { kind: Kind.NAME, value: '__typename' } }] };
    },
  });

const schema = buildSchema(readFileSync(path.join(top, 'schema.graphql'), 'utf8'));

it('whatever a page of ours asks, the server answers: no query is too deep or too large', () => {
  const documents = [...GENERATED.matchAll(DOCUMENT)].map(([, name, json]) => [name!, JSON.parse(json!) as DocumentNode] as const);
  expect(documents.length).toBeGreaterThan(50);
  const refused = documents.flatMap(([name, document]) =>
    validate(schema, asSent(document), [limitsRule]).map(({ message }) => `${name}: ${message}`),
  );
  expect(refused).toEqual([]);
});

/** Fragments that spread the next one twice: a thousand million fields in a kilobyte and a half. */
const doubling = (last: string): DocumentNode =>
  parse(
    Array.from({ length: 30 }, (_, at) => `fragment F${at} on Query { ...F${at + 1} ...F${at + 1} }`).join('\n') +
      `query { ...F0 } fragment F30 on Query { ${last} }`,
  );

it('fragments that spread each other are measured once each, and counted wherever they are spread', () => {
  expect(validate(schema, doubling('...Nowhere'), [limitsRule])).toEqual([]);
  expect(validate(schema, doubling('...F0'), [limitsRule])).toEqual([]);
  const [refused] = validate(schema, doubling('me { __typename }'), [limitsRule]);
  expect(refused?.extensions).toMatchObject({ details: { found: 2 ** 31, most: 1200, what: 'fields' } });
});

it('one request asks a few things: the same question under many names is refused, in fragments too', () => {
  const names = (count: number) => Array.from({ length: count }, (_, at) => `a${at}: properties { id }`).join(' ');
  const refusals = (text: string) => validate(schema, parse(text), [limitsRule]).map(({ extensions }) => extensions['details']);
  expect(refusals(`{ ${names(20)} }`)).toEqual([]);
  expect(refusals(`{ ${names(21)} }`)).toEqual([{ found: 21, most: 20, what: 'questions' }]);
  expect(refusals(`{ ...Many ...Many me { __typename } } fragment Many on Query { ${names(10)} }`)).toEqual([
    { found: 21, most: 20, what: 'questions' },
  ]);
});
