import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** Keeps irrigation water out of the drinking water; tested by a certified tester. */
@Entity('backflow_assembly')
export class BackflowAssemblyRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('text')
  name: string;

  @Column('text', { nullable: true })
  location: string | null;

  @Column('text', { nullable: true })
  kind: string | null;

  @Column('date', { name: 'last_tested_on', nullable: true })
  lastTestedOn: string | null;

  @Column('date', { name: 'next_test_due_on', nullable: true })
  nextTestDueOn: string | null;
}
