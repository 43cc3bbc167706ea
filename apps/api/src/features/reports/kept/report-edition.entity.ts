import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** What was made of a report when it was approved: the model, and the PDF that is sent. */
@Entity('report_edition')
export class ReportEditionRow extends OrganizationRow {
  @Column('uuid', { name: 'report_id' })
  reportId: string;

  @Column('text', { name: 'data_version' })
  dataVersion: string;

  @Column('timestamptz', { name: 'made_at', default: () => 'now()' })
  madeAt: Date;

  /** the model as compressed JSON */
  @Column('bytea')
  model: Buffer;

  @Column('bytea')
  pdf: Buffer;
}
