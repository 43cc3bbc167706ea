import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { Arrive } from '../../fieldwork/visits/deeds/arrive.service.js';
import { EndVisit } from '../../fieldwork/visits/deeds/end-visit.service.js';
import { NoteZone } from '../../fieldwork/visits/deeds/note-zone.service.js';
import { WithdrawVisit } from '../../fieldwork/visits/deeds/withdraw-visit.service.js';
import { AnnouncePhoto } from '../../fieldwork/visits/photos/announce-photo.service.js';
import type { Body } from './body.js';
import { APPLIED, type DoneOperation } from './done-operation.js';
import { closingBefore, closingOf, noteBefore, zoneNoteOf } from './records-of-body.js';

/** What a phone says of a visit. A visit's id is the key of its arrival. */
@Injectable()
export class DoVisit {
  constructor(
    private readonly arriving: Arrive,
    private readonly noting: NoteZone,
    private readonly announcing: AnnouncePhoto,
    private readonly ending: EndVisit,
    private readonly withdrawing: WithdrawVisit,
  ) {}

  async arrive(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    const visit = await this.arriving.run(tx, { deviceRecordId: key, stopId: body.text('stopId'), arrivedAt: body.instant('arrivedAt') });
    if (visit.id === key.toLowerCase()) return APPLIED;
    // Somebody of the crew was there already: what this phone tells of its visit is told of theirs.
    const { id: visitId, arrivedAt, personId } = visit;
    return {
      verdict: 'applied',
      other: { visitId, arrivedAt: arrivedAt.toISOString(), by: await nameOf(tx, personId) },
      before: { kind: 'arrive', id: visitId, personId, at: arrivedAt },
    };
  }

  async noteZone(tx: OrganizationTransaction, _: string, body: Body, savedAt: Date): Promise<DoneOperation> {
    const { before } = await this.noting.run(tx, zoneNoteOf(body), { savedAt, over: noteBefore(body) });
    if (!before) return APPLIED;
    const { count, word, repaired, personId, recordedAt, zoneId } = before;
    return {
      verdict: 'conflict',
      other: { count, word, repaired, by: await nameOf(tx, personId) },
      before: { kind: 'note-zone', personId, at: recordedAt, savedAt: recordedAt, ...(zoneId && { holds: [zoneId] }) },
    };
  }

  async photo(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    await this.announcing.run(tx, {
      id: key,
      visitId: body.text('visitId'),
      kind: body.text('kind'),
      takenAt: body.instant('takenAt'),
      zoneId: body.textOrNull('zoneId'),
      noteKind: body.textOrNull('noteKind'),
      workOrderId: body.textOrNull('workOrderId'),
      word: body.textOrNull('word'),
      latitude: body.numberOrNull('latitude'),
      longitude: body.numberOrNull('longitude'),
    });
    return APPLIED;
  }

  async withdraw(tx: OrganizationTransaction, body: Body, savedAt: Date): Promise<DoneOperation> {
    await this.withdrawing.run(tx, body.text('visitId'), savedAt);
    return APPLIED;
  }

  async close(tx: OrganizationTransaction, _: string, body: Body): Promise<DoneOperation> {
    const { before } = await this.ending.run(tx, body.text('visitId'), closingOf(body), closingBefore(body));
    if (!before) return APPLIED;
    const { closedAt, doneNote, leftNote, workedMinutes, materials, closedBy } = before;
    const other = { closedAt: closedAt?.toISOString() ?? null, doneNote, leftNote, workedMinutes, materials };
    const ended = closedAt ? [closedAt.toISOString(), closedAt.toISOString().replace('.000Z', 'Z')] : [];
    return {
      verdict: 'conflict',
      other: { ...other, by: await nameOf(tx, closedBy) },
      before: { kind: 'close-visit', personId: closedBy, at: null, holds: ended },
    };
  }
}

const nameOf = async (tx: OrganizationTransaction, personId: string | null): Promise<string | null> =>
  personId ? personNameOfId.of(tx).load(personId) : null;
