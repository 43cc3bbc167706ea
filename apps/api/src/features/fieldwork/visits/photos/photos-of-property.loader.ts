import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { PhotoRow } from './photo.entity.js';
import { photos } from './photo.repository.js';

/** The photos of a property, in the order in which they were taken; whoever hands out the property's id answers for the scope. */
export const photosOfProperty = defineLoader<string, readonly PhotoRow[]>(
  async (tx, ids) => grouped(await photos.ofProperties(tx, ids), (row) => row.propertyId),
  [],
);
