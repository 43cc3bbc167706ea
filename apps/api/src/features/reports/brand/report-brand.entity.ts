import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** The dress of an organization's reports. */
@Entity('report_brand')
export class ReportBrandRow extends OrganizationRow {
  /** null for the organization's own */
  @Column('text', { nullable: true })
  name: string | null;

  /** #rrggbb */
  @Column('text', { nullable: true })
  colour: string | null;

  /** PNG or JPEG */
  @Column('bytea', { nullable: true })
  logo: Buffer | null;

  @Column('text', { nullable: true })
  contact: string | null;

  @Column('integer', { default: 1 })
  version: number;
}
