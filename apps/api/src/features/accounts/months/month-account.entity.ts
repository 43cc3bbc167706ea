import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';
import type { AccountDetail } from './packed-columns.js';
import { keptDetail } from './kept-detail.js';
import { packed } from './packed-value.js';

/** The account of a property and month, or of one of its meters. Volumes in litres; null is not known. */
@Entity('month_account')
export class MonthAccountRow extends OrganizationRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  /** null for the property's own account */
  @Column('uuid', { name: 'meter_id', nullable: true })
  meterId: string | null;

  /** the month's first day */
  @Column('date')
  month: string;

  @Column('date', { name: 'through_on' })
  throughOn: string;

  @Column('double precision', { name: 'allowed_l', nullable: true })
  allowedL: number | null;

  @Column('double precision', { name: 'allowed_sd_l', nullable: true })
  allowedSdL: number | null;

  @Column('double precision', { name: 'needed_l', nullable: true })
  neededL: number | null;

  @Column('double precision', { name: 'needed_sd_l', nullable: true })
  neededSdL: number | null;

  @Column('double precision', { name: 'programmed_l', nullable: true })
  programmedL: number | null;

  @Column('double precision', { name: 'programmed_sd_l', nullable: true })
  programmedSdL: number | null;

  @Column('double precision', { name: 'metered_l', nullable: true })
  meteredL: number | null;

  @Column('double precision', { name: 'metered_sd_l', nullable: true })
  meteredSdL: number | null;

  @Column('double precision', { name: 'over_l', nullable: true })
  overL: number | null;

  @Column('double precision', { name: 'under_l', nullable: true })
  underL: number | null;

  /** metered less needed [L] */
  @Column('double precision', { name: 'above_need_l', nullable: true })
  aboveNeedL: number | null;

  @Column('double precision', { name: 'above_need_sd_l', nullable: true })
  aboveNeedSdL: number | null;

  @Column('double precision', { name: 'above_need_money', nullable: true })
  aboveNeedMoney: number | null;

  /** packed: an account has many numbers, and there are many accounts */
  @Column('bytea', { transformer: { from: keptDetail, to: packed } })
  detail: AccountDetail;

  /** what it says of settings, allowance and sources, packed: findings put months together without their accounts; null until it is computed again */
  @Column('bytea', { nullable: true, select: false })
  judged: Buffer | null;

  /** fingerprint of everything the account was computed from */
  @Column('text', { name: 'inputs_version' })
  inputsVersion: string;

  @Column('timestamptz', { name: 'computed_at', default: () => 'now()' })
  computedAt: Date;
}
