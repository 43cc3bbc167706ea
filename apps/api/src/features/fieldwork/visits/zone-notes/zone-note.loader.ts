import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { ZoneNoteRow } from './zone-note.entity.js';
import { zoneNotes } from './zone-note.repository.js';

/** What was seen on the zone walk of a visit. */
export const notesOfVisit = defineLoader<string, readonly ZoneNoteRow[]>(
  async (tx, ids) => grouped(await zoneNotes.ofVisits(tx, ids), (row) => row.visitId),
  [],
);
