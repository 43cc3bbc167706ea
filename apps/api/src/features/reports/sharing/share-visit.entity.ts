import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** Somebody opened a report by its link. */
@Entity('share_visit')
export class ShareVisitRow extends OrganizationRow {
  @Column('uuid', { name: 'share_link_id' })
  shareLinkId: string;

  @Column('timestamptz', { default: () => 'now()' })
  at: Date;

  @Column('text')
  file: string;

  @Column('text', { nullable: true })
  device: string | null;
}
