import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** By the meter, with the zone running alone; or by cans. */
export type ZoneTestKind = 'flow' | 'catch';

/** A test of a zone at a visit. Never edited: the latest of a kind is what counts. */
@Entity('zone_test')
export class ZoneTestRow extends OrganizationRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('uuid', { name: 'visit_id', nullable: true })
  visitId: string | null;

  @Column('uuid', { name: 'zone_id' })
  zoneId: string;

  @Column('text')
  kind: ZoneTestKind;

  @Column('timestamptz', { name: 'tested_at' })
  testedAt: Date;

  @Column('double precision', { nullable: true })
  minutes: number | null;

  @Column('uuid', { name: 'meter_id', nullable: true })
  meterId: string | null;

  @Column('double precision', { name: 'register_before', nullable: true })
  registerBefore: number | null;

  @Column('double precision', { name: 'register_after', nullable: true })
  registerAfter: number | null;

  @Column('double precision', { name: 'flow_l_per_min', nullable: true })
  flowLPerMin: number | null;

  /** from the register's resolution; null where nobody has said it */
  @Column('double precision', { name: 'flow_sd_l_per_min', nullable: true })
  flowSdLPerMin: number | null;

  @Column('double precision', { name: 'catches_ml', array: true, default: '{}' })
  catchesMl: number[];

  /** of a can [m2] */
  @Column('double precision', { name: 'mouth_m2', nullable: true })
  mouthM2: number | null;

  @Column('double precision', { name: 'du_lq', nullable: true })
  duLq: number | null;

  @Column('double precision', { name: 'rate_mm_per_h', nullable: true })
  rateMmPerH: number | null;

  @Column('text', { nullable: true })
  word: string | null;

  /** whether it told enough to stand on the zone's record, and no later test of the kind had come before it */
  @Column('boolean', { name: 'on_record' })
  onRecord: boolean;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'received_at', default: () => 'now()' })
  receivedAt: Date;
}
