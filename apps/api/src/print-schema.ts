import 'reflect-metadata';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { GraphQLSchemaHost } from '@nestjs/graphql';
import { lexicographicSortSchema, printSchema } from 'graphql';
import { makeApplication } from './application.js';
import { entities } from './entities.js';
import { appDataSource } from './platform/database/data-source.js';

const file = path.resolve(import.meta.dirname, '../../../schema.graphql');

// The schema needs no database: the source is named, never opened.
const app = await makeApplication(appDataSource('postgres://nobody@127.0.0.1:1/none', entities));
await app.init();
const printed = `# Printed from the resolvers; change those, then print it again: npm run schema\n${printSchema(lexicographicSortSchema(app.get(GraphQLSchemaHost).schema))}\n`;
await app.close();

if (!process.argv.includes('--check')) writeFileSync(file, printed);
else if (readFileSync(file, 'utf8') !== printed) {
  console.error('schema.graphql is not what the resolvers say. Print it again: npm run schema');
  process.exitCode = 1;
}
