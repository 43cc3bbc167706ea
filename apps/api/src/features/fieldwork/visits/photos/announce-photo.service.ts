import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { between, judgeValues, oneOf, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { SeeOnSite } from '../../../findings/opening/see-on-site.service.js';
import type { VisitRow } from '../visit.entity.js';
import { requirePossibleTime } from '../deeds/require-possible-time.js';
import { workedVisit } from '../deeds/require-visit.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { zoneNotes } from '../zone-notes/zone-note.repository.js';
import { PHOTO_KINDS, type PhotoKind, type PhotoRow } from './photo.entity.js';
import type { PhotoInput } from './photo.input.js';
import { photos } from './photo.repository.js';

/** Tells of a photo that was taken at a visit. The phone names it: told again it is the same photo. */
@Injectable()
export class AnnouncePhoto {
  constructor(private readonly seeing: SeeOnSite) {}

  async run(tx: OrganizationTransaction, input: PhotoInput): Promise<PhotoRow> {
    judgePhoto(input);
    if (!isUuid(input.id)) throw platformProblems.valueRefused({ field: 'id', found: input.id, expected: 'a UUID made by the phone' });
    await requirePossibleTime(tx, 'takenAt', input.takenAt);
    const visit = await workedVisit(tx, input.visitId);
    const before = await photos.ofId(tx, input.id);
    if (before) return same(before, input);
    await this.requireOnProperty(tx, visit, input);
    await photos.insert(tx, {
      organizationId: tx.organizationId,
      id: input.id,
      propertyId: visit.propertyId,
      visitId: visit.id,
      zoneId: input.zoneId ?? null,
      findingId: input.findingId ?? (await this.shown(tx, visit, input)),
      workOrderId: input.workOrderId ?? null,
      kind: input.kind as PhotoKind,
      word: input.word?.trim() || null,
      takenAt: input.takenAt,
      latitude: input.latitude ?? null,
      longitude: input.longitude ?? null,
      personId: tx.actor.personId,
    });
    return (await photos.ofId(tx, input.id))!;
  }

  /** What it is said to show is where it was taken. */
  private async requireOnProperty(tx: OrganizationTransaction, { propertyId }: VisitRow, input: PhotoInput): Promise<void> {
    const { zoneId = null, findingId = null, workOrderId = null } = input;
    if (zoneId && !(await zoneNotes.standsOn(tx, zoneId, propertyId)))
      throw platformProblems.valueRefused({ field: 'zoneId', found: zoneId, expected: 'a zone of the property that is visited' });
    const [stranger] = await photos.strangers(tx, propertyId, { findingId, workOrderId });
    if (stranger)
      throw platformProblems.valueRefused({ field: stranger, found: input[stranger], expected: 'one of the property that is visited' });
  }

  /** The finding that was made of what the photo shows. */
  private async shown(tx: OrganizationTransaction, visit: VisitRow, { noteKind, zoneId }: PhotoInput): Promise<string | null> {
    if (!noteKind) return null;
    return this.seeing.find(tx, { propertyId: visit.propertyId, visitId: visit.id, what: noteKind, zoneId: zoneId ?? null });
  }
}

function judgePhoto(input: PhotoInput): void {
  judgeValues(input, {
    kind: oneOf(...PHOTO_KINDS),
    word: text,
    latitude: between(-90, 90, '°'),
    longitude: between(-180, 180, '°'),
  });
  if (((input.latitude ?? null) === null) !== ((input.longitude ?? null) === null))
    throw platformProblems.valueRefused({
      field: 'longitude',
      found: input.longitude,
      expected: 'both latitude and longitude, or neither',
    });
}

function same(before: PhotoRow, input: PhotoInput): PhotoRow {
  const isSame = before.kind === input.kind && before.takenAt.getTime() === input.takenAt.getTime();
  if (isSame) return before;
  throw fieldworkProblems.photoConflict({ photoId: before.id, kind: before.kind, takenAt: before.takenAt.toISOString() });
}
