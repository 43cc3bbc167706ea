import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { PhotoRow } from './photo.entity.js';
import { photos } from './photo.repository.js';

/** The photos that show a finding, in the order in which they were taken. */
export const photosOfFinding = defineLoader<string, readonly PhotoRow[]>(
  async (tx, ids) => grouped(await photos.ofFindings(tx, ids), (row) => row.findingId!),
  [],
);
