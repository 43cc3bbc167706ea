import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** What a photo shows, in the exact words of the column. */
export const PHOTO_KINDS = ['before', 'after', 'meter', 'controller', 'seen', 'other'] as const;
export type PhotoKind = (typeof PHOTO_KINDS)[number];

/** A photo of field work. It is told of first; until its picture has arrived, everything about the file is null. */
@Entity('photo')
export class PhotoRow extends OrganizationRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('uuid', { name: 'visit_id', nullable: true })
  visitId: string | null;

  @Column('uuid', { name: 'zone_id', nullable: true })
  zoneId: string | null;

  @Column('uuid', { name: 'finding_id', nullable: true })
  findingId: string | null;

  @Column('uuid', { name: 'work_order_id', nullable: true })
  workOrderId: string | null;

  @Column('text')
  kind: PhotoKind;

  @Column('text', { nullable: true })
  word: string | null;

  @Column('timestamptz', { name: 'taken_at' })
  takenAt: Date;

  /** where it was taken, only where that was wanted: the file itself never says it */
  @Column('double precision', { nullable: true })
  latitude: number | null;

  @Column('double precision', { nullable: true })
  longitude: number | null;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'announced_at', default: () => 'now()' })
  announcedAt: Date;

  @Column('timestamptz', { name: 'arrived_at', nullable: true })
  arrivedAt: Date | null;

  /** of the bytes as the phone sent them: sent again they are the same photo */
  @Column('text', { name: 'sent_sha256', nullable: true })
  sentSha256: string | null;

  /** of the picture as it is kept; its name among the organization's files */
  @Column('text', { name: 'file_sha256', nullable: true })
  fileSha256: string | null;

  @Column('integer', { name: 'file_bytes', nullable: true })
  fileBytes: number | null;

  @Column('integer', { nullable: true })
  width: number | null;

  @Column('integer', { nullable: true })
  height: number | null;
}
