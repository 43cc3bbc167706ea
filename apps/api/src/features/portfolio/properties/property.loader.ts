import { defineLoader } from '../../../platform/graphql/loader.js';
import type { PropertyRow } from './property.entity.js';
import { properties } from './property.repository.js';

/** The property of an id, retired ones too; whoever hands out the id answers for the scope. */
export const propertyOfId = defineLoader<string, PropertyRow | null>(
  async (tx, ids) => new Map((await properties.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
