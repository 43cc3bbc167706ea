import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { nowIn } from '../../organization-clock.js';
import type { ZoneNoteInput } from '../visit.input.js';
import { ZONE_NOTE_KINDS, type ZoneNoteKind, type ZoneNoteRow } from '../zone-notes/zone-note.entity.js';
import { zoneNotes } from '../zone-notes/zone-note.repository.js';
import { requireVisit } from './require-visit.js';

const refuse = (field: string, found: unknown, expected: string) => platformProblems.valueRefused({ field, found, expected });

/**
 * Notes what was seen in a zone. A visit has one note for each zone and kind ('other': and word): said again it is
 * replaced, so that a phone may send it twice, or send a higher count.
 */
@Injectable()
export class NoteZone {
  async run(tx: OrganizationTransaction, input: ZoneNoteInput): Promise<ZoneNoteRow> {
    judgeValues(input, { word: text });
    const kind = kindOf(input);
    if (input.count < 1) throw refuse('count', input.count, '1 or more');
    const visit = await requireVisit(tx, input.visitId);
    if (input.zoneId && !(await zoneNotes.standsOn(tx, input.zoneId, visit.propertyId)))
      throw refuse('zoneId', input.zoneId, 'a zone of the property that is visited');
    const said = {
      zoneId: input.zoneId ?? null,
      kind,
      count: input.count,
      word: input.word?.trim() || null,
      repaired: input.repaired ?? false,
      personId: tx.actor.personId,
    };
    const present = (await zoneNotes.ofVisits(tx, [visit.id])).find(
      (note) => note.zoneId === said.zoneId && note.kind === kind && (kind !== 'other' || note.word === said.word),
    );
    if (present) {
      const { count, word, repaired, personId } = said;
      await zoneNotes.update(tx, present.id, { count, word, repaired, personId });
      return { ...present, ...said };
    }
    const made = { ...said, organizationId: tx.organizationId, id: randomUUID(), visitId: visit.id, recordedAt: await nowIn(tx) };
    await zoneNotes.insert(tx, made);
    return made;
  }
}

function kindOf({ kind }: ZoneNoteInput): ZoneNoteKind {
  const known = ZONE_NOTE_KINDS.find((one) => one === kind);
  if (!known) throw refuse('kind', kind, `one of ${ZONE_NOTE_KINDS.join(', ')}`);
  return known;
}
