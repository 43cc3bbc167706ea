import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { PhotoRow } from './photo.entity.js';
import { photos } from './photo.repository.js';

/** The photos of a visit, in the order in which they were taken, also those whose picture is still on a phone. */
export const photosOfVisit = defineLoader<string, readonly PhotoRow[]>(
  async (tx, ids) => grouped(await photos.ofVisits(tx, ids), (row) => row.visitId!),
  [],
);
