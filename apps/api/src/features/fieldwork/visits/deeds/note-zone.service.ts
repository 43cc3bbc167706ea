import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { SeeOnSite } from '../../../findings/opening/see-on-site.service.js';
import { propertyOfId } from '../../../portfolio/properties/property.loader.js';
import { nowIn } from '../../organization-clock.js';
import type { VisitRow } from '../visit.entity.js';
import type { ZoneNoteInput } from '../visit.input.js';
import { ZONE_NOTE_KINDS, type ZoneNoteKind, type ZoneNoteRow } from '../zone-notes/zone-note.entity.js';
import { zoneNotes } from '../zone-notes/zone-note.repository.js';
import { requireVisit } from './require-visit.js';

const refuse = (field: string, found: unknown, expected: string) => platformProblems.valueRefused({ field, found, expected });

/** What is noted, and the name that the phone gave the note: its word may still change. */
export type NamedNote = ZoneNoteInput & { readonly noteId?: string | null };

/** A note, and what another person had said of the same zone and kind before, where that was something else. */
export interface NotedZone {
  readonly note: ZoneNoteRow;
  readonly before: ZoneNoteRow | null;
}

/**
 * Notes what was seen in a zone. A visit has one note for each zone and kind; one of the kind 'other' is known by the name that the phone gave
 * it, else by its word. Said again it is replaced, so that a phone may send it twice, or send a higher count.
 */
@Injectable()
export class NoteZone {
  constructor(private readonly seeing: SeeOnSite) {}

  async run(tx: OrganizationTransaction, input: NamedNote): Promise<NotedZone> {
    judgeValues(input, { word: text });
    const kind = kindOf(input);
    const noteId = nameOf(input, kind);
    if (input.count < 1) throw refuse('count', input.count, '1 or more');
    const visit = await requireVisit(tx, input.visitId);
    if (input.zoneId && !(await zoneNotes.standsOn(tx, input.zoneId, visit.propertyId)))
      throw refuse('zoneId', input.zoneId, 'a zone of the property that is visited');
    const said = { ...saidIn(input), kind, personId: tx.actor.personId };
    await this.makeFinding(tx, visit, said);
    const present = (await zoneNotes.ofVisits(tx, [visit.id])).find(
      (note) => note.zoneId === said.zoneId && note.kind === kind && isNamedSo(note, noteId, said.word),
    );
    if (present) {
      const { count, word, repaired, personId } = said;
      await zoneNotes.update(tx, present.id, { count, word, repaired, personId });
      return { note: { ...present, ...said }, before: isOthers(present, said) ? present : null };
    }
    const made = { ...said, organizationId: tx.organizationId, id: noteId ?? randomUUID(), visitId: visit.id, recordedAt: await nowIn(tx) };
    await zoneNotes.insert(tx, made);
    return { note: made, before: null };
  }

  private async makeFinding(
    tx: OrganizationTransaction,
    visit: VisitRow,
    note: Omit<Said, 'personId'> & Pick<ZoneNoteRow, 'zoneId' | 'kind'>,
  ) {
    const property = (await propertyOfId.of(tx).load(visit.propertyId))!;
    const { zoneId, kind: what, count, word, repaired } = note;
    const { propertyId, id: visitId, arrivedAt: seenAt } = visit;
    await this.seeing.run(tx, { propertyId, visitId, seenAt, timeZone: property.timeZone, zoneId, what, count, word, repaired });
  }
}

type Said = Pick<ZoneNoteRow, 'count' | 'word' | 'repaired' | 'personId'>;

const saidIn = ({ zoneId, count, word, repaired }: NamedNote) => ({
  zoneId: zoneId ?? null,
  count,
  word: word?.trim() || null,
  repaired: repaired ?? false,
});

const isNamedSo = ({ kind, id, word }: ZoneNoteRow, noteId: string | null, saidWord: string | null): boolean =>
  kind !== 'other' || (noteId ? id === noteId : word === saidWord);

function nameOf({ noteId }: NamedNote, kind: ZoneNoteKind): string | null {
  if (kind !== 'other') return null;
  if (noteId && !isUuid(noteId)) throw refuse('noteId', noteId, 'a UUID made by the phone');
  return noteId?.toLowerCase() ?? null;
}

const isOthers = (present: Said, said: Said): boolean =>
  present.personId !== null &&
  present.personId !== said.personId &&
  (present.count !== said.count || present.word !== said.word || present.repaired !== said.repaired);

function kindOf({ kind }: ZoneNoteInput): ZoneNoteKind {
  const known = ZONE_NOTE_KINDS.find((one) => one === kind);
  if (!known) throw refuse('kind', kind, `one of ${ZONE_NOTE_KINDS.join(', ')}`);
  return known;
}
