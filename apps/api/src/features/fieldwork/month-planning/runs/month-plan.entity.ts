import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../../platform/records/kept-row.js';

/** Why an item of a plan has no day. */
export interface KeptReason {
  readonly itemId: string;
  readonly code: string;
  readonly details: Record<string, unknown>;
  /** An earlier planning found it, of what this one did not plan: it stands also when this one is undone. */
  readonly isEarlier?: boolean;
}

/** Where something stood before a plan moved it; a null place had no day. */
export interface StoodBefore {
  readonly propertyId: string;
  readonly orderIds: readonly string[];
  readonly was: { readonly crewId: string; readonly day: string; readonly position: number; readonly locked: boolean } | null;
  readonly went: { readonly crewId: string; readonly day: string } | null;
}

/** One planning of a month: what it moved, so that it can be undone, and what found no day. */
@Entity('month_plan')
export class MonthPlanRow extends KeptRow {
  /** its first day */
  @Column('date')
  month: string;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  @Column('uuid', { name: 'made_by', nullable: true })
  madeBy: string | null;

  @Column('timestamptz', { name: 'undone_at', nullable: true })
  undoneAt: Date | null;

  @Column('jsonb')
  travel: Record<string, unknown>;

  @Column('jsonb')
  before: StoodBefore[];

  @Column('integer')
  moved: number;

  @Column('jsonb')
  unplaced: KeptReason[];
}
