import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A landscape maintenance company that works with Rillbook: its own row, which is not a row of an organization. */
@Entity('organization')
export class OrganizationItself {
  @PrimaryColumn('uuid', { default: () => 'gen_random_uuid()' })
  id: string;

  @Column('text')
  name: string;

  @Column('text', { default: 'us' })
  units: 'us' | 'metric';

  @Column('text', { default: 'en' })
  language: 'en' | 'es';

  @Column('text', { name: 'time_zone', default: 'America/Los_Angeles' })
  timeZone: string;

  @Column('text', { default: 'USD' })
  currency: string;

  /** the least confidence with which a finding is opened [–] */
  @Column('double precision', { name: 'least_confidence', default: 0.9 })
  leastConfidence: number;

  /** the least volume that opens a finding [L] */
  @Column('double precision', { name: 'least_litres', default: 757.0823568 })
  leastLitres: number;

  /** the least money that opens a finding [money] */
  @Column('double precision', { name: 'least_money', default: 1 })
  leastMoney: number;

  /** the day on which a demonstration's world stands still */
  @Column('date', { name: 'stands_still_on', nullable: true })
  standsStillOn: string | null;

  @Column('boolean', { name: 'is_demo', default: false })
  isDemo: boolean;

  @Column('integer', { default: 1 })
  version: number;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
