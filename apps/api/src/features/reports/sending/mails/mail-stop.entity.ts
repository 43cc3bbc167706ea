import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** An address that wants no more reports. */
@Entity('mail_stop')
export class MailStopRow extends OrganizationRow {
  @Column('text')
  email: string;

  @Column('timestamptz', { default: () => 'now()' })
  at: Date;
}
