import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import type { PropertyRow } from './property.entity.js';
import { properties } from './property.repository.js';
import { inScope } from './property-scope.service.js';

/** The properties in use of a client that the actor may see. */
export const propertiesOfClient = defineLoader<string, readonly PropertyRow[]>(async (tx, clientIds) => {
  const rows = await properties.ofClients(tx, clientIds);
  const visible = await inScope(
    tx,
    rows.map((row) => row.id),
  );
  return grouped(
    rows.filter((row) => visible.has(row.id)),
    (row) => row.clientId,
  );
}, []);
