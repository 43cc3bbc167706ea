import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** A member of the organization who goes with a crew. */
@Entity('crew_member')
export class CrewMemberRow extends OrganizationRow {
  @Column('uuid', { name: 'crew_id' })
  crewId: string;

  @Column('uuid', { name: 'member_id' })
  memberId: string;
}
