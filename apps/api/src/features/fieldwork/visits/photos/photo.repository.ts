import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { crewsInScope } from '../../crews/crew-scope.js';
import { PhotoRow } from './photo.entity.js';

/** What becomes of a photo when its picture arrives. */
export type ArrivedPicture = Pick<PhotoRow, 'arrivedAt' | 'sentSha256' | 'fileSha256' | 'fileBytes' | 'width' | 'height'>;

/** Photos of which the rows of some column name. */
const named = (tx: OrganizationTransaction, column: 'visitId' | 'propertyId' | 'findingId', ids: readonly string[]): Promise<PhotoRow[]> =>
  tx.of(PhotoRow).find({ where: { organizationId: tx.organizationId, [column]: In([...ids]) }, order: { takenAt: 'ASC', id: 'ASC' } });

/** All SQL of photos. */
export const photos = {
  ofVisits: (tx: OrganizationTransaction, ids: readonly string[]): Promise<PhotoRow[]> => named(tx, 'visitId', ids),

  ofProperties: (tx: OrganizationTransaction, ids: readonly string[]): Promise<PhotoRow[]> => named(tx, 'propertyId', ids),

  ofFindings: (tx: OrganizationTransaction, ids: readonly string[]): Promise<PhotoRow[]> => named(tx, 'findingId', ids),

  /** A photo whether the actor sees it or not. */
  async ofId(tx: OrganizationTransaction, id: string): Promise<PhotoRow | null> {
    return isUuid(id) ? tx.of(PhotoRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  /** A photo of a visit of a crew whose work the actor sees, or one that they took. */
  async seen(tx: OrganizationTransaction, id: string): Promise<PhotoRow | null> {
    const photo = await this.ofId(tx, id);
    const crews = await crewsInScope(tx);
    if (!photo || crews === null) return photo;
    if (photo.personId !== null && photo.personId === tx.actor.personId) return photo;
    const rows = await tx.query('select from visit where organization_id = $1 and id = $2 and crew_id = any($3::uuid[])', [
      tx.organizationId,
      photo.visitId,
      crews,
    ]);
    return rows.length > 0 ? photo : null;
  },

  /** Which of the finding and the order that a photo names are not of the property. */
  async strangers(
    tx: OrganizationTransaction,
    propertyId: string,
    { findingId, workOrderId }: Pick<PhotoRow, 'findingId' | 'workOrderId'>,
  ): Promise<('findingId' | 'workOrderId')[]> {
    const rows = await tx.query<{ field: 'findingId' | 'workOrderId' }>(
      `select field from (values ('findingId', $3), ('workOrderId', $4)) as named (field, id)
        where id is not null and not exists (
          select from (select organization_id, property_id, id from finding union all select organization_id, property_id, id from work_order) as thing
           where thing.organization_id = $1 and thing.property_id = $2 and thing.id::text = lower(named.id))`,
      [tx.organizationId, propertyId, findingId, workOrderId],
    );
    return rows.map(({ field }) => field);
  },

  async insert(tx: OrganizationTransaction, row: Omit<PhotoRow, keyof ArrivedPicture | 'announcedAt'>): Promise<void> {
    await tx.of(PhotoRow).insert(row);
  },

  /** Once: a picture that has arrived is never replaced. Returns whether it was this time. */
  async arrive(tx: OrganizationTransaction, id: string, picture: ArrivedPicture): Promise<boolean> {
    const { affected } = await tx.of(PhotoRow).update({ organizationId: tx.organizationId, id, arrivedAt: IsNull() }, picture);
    return affected === 1;
  },
};
