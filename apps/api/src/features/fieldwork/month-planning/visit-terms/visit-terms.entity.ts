import type { VisitHours } from '@rillbook/routing/day/open-windows.js';
import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../../platform/records/kept-row.js';

/** How often a property is visited, and when it may be. */
@Entity('visit_terms')
export class VisitTermsRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  /** null: only when there is work */
  @Column('integer', { name: 'every_days', nullable: true })
  everyDays: number | null;

  /** how long a visit without other work takes; null: not known */
  @Column('integer', { name: 'visit_minutes', nullable: true })
  visitMinutes: number | null;

  @Column('text', { array: true, default: '{}' })
  skills: string[];

  @Column('jsonb', { default: [] })
  hours: VisitHours[];
}
