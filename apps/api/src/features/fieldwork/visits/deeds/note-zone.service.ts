import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { SeeOnSite } from '../../../findings/opening/see-on-site.service.js';
import { propertyOfId } from '../../../portfolio/properties/property.loader.js';
import type { VisitRow } from '../visit.entity.js';
import type { ZoneNoteInput } from '../visit.input.js';
import { ZONE_NOTE_KINDS, type ZoneNoteKind, type ZoneNoteRow } from '../zone-notes/zone-note.entity.js';
import { zoneNotes } from '../zone-notes/zone-note.repository.js';
import { saidAt } from './require-possible-time.js';
import { workedVisit } from './require-visit.js';

const refuse = (field: string, found: unknown, expected: string) => platformProblems.valueRefused({ field, found, expected });

/** What is noted, and the name that the phone gave the note: its word may still change. */
type NamedNote = ZoneNoteInput & { readonly noteId?: string | null };

/** A note, and what had been said of the same zone and kind before, where it was something else and the phone did not know of it. */
export interface NotedZone {
  readonly note: ZoneNoteRow;
  readonly before: ZoneNoteRow | null;
}

/** When and over what a phone said it. */
export interface SaidOnPhone {
  readonly savedAt: Date;
  /** the note that the phone showed; null where it showed none, undefined where the phone does not tell */
  readonly over: NoteWords | null | undefined;
}

export type NoteWords = Pick<ZoneNoteRow, 'count' | 'word' | 'repaired'>;

/** More of one thing than anybody counts in a zone. */
const MOST_COUNT = 1000;

/**
 * Notes what was seen in a zone. A visit has one note for each zone and kind; one of the kind 'other' is known by the name that the phone gave
 * it, else by its word. Said again it is replaced, so that a phone may send it twice, or send a higher count.
 */
@Injectable()
export class NoteZone {
  constructor(private readonly seeing: SeeOnSite) {}

  async run(tx: OrganizationTransaction, input: NamedNote, phone?: SaidOnPhone): Promise<NotedZone> {
    const kind = judged(input);
    const noteId = nameOf(input, kind);
    const visit = await workedVisit(tx, input.visitId);
    if (input.zoneId && !(await zoneNotes.standsOn(tx, input.zoneId, visit.propertyId)))
      throw refuse('zoneId', input.zoneId, 'a zone of the property that is visited');
    const said = { ...saidIn(input), kind, personId: tx.actor.personId, recordedAt: await saidAt(tx, phone?.savedAt) };
    await this.makeFinding(tx, visit, said);
    const present = (await zoneNotes.ofVisits(tx, [visit.id])).find(
      (note) => note.zoneId === said.zoneId && note.kind === kind && isNamedSo(note, noteId, said.word),
    );
    if (present) {
      const { count, word, repaired, personId, recordedAt } = said;
      await zoneNotes.update(tx, present.id, { count, word, repaired, personId, recordedAt });
      return { note: { ...present, ...said }, before: isBlind(present, said, phone) ? present : null };
    }
    const made = { ...said, organizationId: tx.organizationId, id: noteId ?? randomUUID(), visitId: visit.id };
    await zoneNotes.insert(tx, made);
    return { note: made, before: null };
  }

  private async makeFinding(tx: OrganizationTransaction, visit: VisitRow, note: NoteWords & Pick<ZoneNoteRow, 'zoneId' | 'kind'>) {
    const property = (await propertyOfId.of(tx).load(visit.propertyId))!;
    const { zoneId, kind: what, count, word, repaired } = note;
    const { propertyId, id: visitId, arrivedAt: seenAt } = visit;
    await this.seeing.run(tx, { propertyId, visitId, seenAt, timeZone: property.timeZone, zoneId, what, count, word, repaired });
  }
}

type Said = Pick<ZoneNoteRow, 'count' | 'word' | 'repaired' | 'personId' | 'recordedAt'>;

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

const isSame = (one: NoteWords, other: NoteWords): boolean =>
  one.count === other.count && one.word === other.word && one.repaired === other.repaired;

/**
 * Whether something else was said over a note that the phone did not know of: another person's, or one's own that was said later, on another
 * phone. Who saw what stood there corrects it.
 */
function isBlind(present: Said, said: Said, phone: SaidOnPhone | undefined): boolean {
  if (present.personId === null || isSame(present, said)) return false;
  if (phone?.over !== undefined) return phone.over === null || !isSame(present, { ...phone.over, word: phone.over.word?.trim() || null });
  return present.personId !== said.personId || (phone !== undefined && said.recordedAt < present.recordedAt);
}

/** The kind, where everything else that was told can be. */
function judged(input: ZoneNoteInput): ZoneNoteKind {
  judgeValues(input, { word: text });
  if (!(Number.isInteger(input.count) && input.count >= 1 && input.count <= MOST_COUNT))
    throw refuse('count', input.count, `a whole number from 1 to ${MOST_COUNT}`);
  return kindOf(input);
}

function kindOf({ kind }: ZoneNoteInput): ZoneNoteKind {
  const known = ZONE_NOTE_KINDS.find((one) => one === kind);
  if (!known) throw refuse('kind', kind, `one of ${ZONE_NOTE_KINDS.join(', ')}`);
  return known;
}
