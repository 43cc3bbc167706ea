import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { VisitRow } from '../visit.entity.js';
import { CloseVisit, type Closing, isSameClosing } from './close-visit.service.js';
import { requireVisit } from './require-visit.js';

/** A visit that was ended, and as it had been ended before, where that was something else and the phone did not know of it. */
export interface EndedVisit {
  readonly visit: VisitRow;
  readonly before: VisitRow | null;
}

/** Ends a visit as a phone tells it, in the order in which phones are heard: the last word stands, and the one before it is told. */
@Injectable()
export class EndVisit {
  constructor(private readonly closing: CloseVisit) {}

  /** @param over - The ending that the phone showed; null where it showed none, undefined where the phone does not tell. */
  async run(tx: OrganizationTransaction, id: string, closing: Closing, over?: Closing | null): Promise<EndedVisit> {
    const present = await requireVisit(tx, id);
    const isAnother = present.closedAt !== null && !isSameClosing(present, closing);
    const before = isAnother && !isKnown(tx, present, closing, over) ? present : null;
    return { visit: await this.closing.run(tx, id, present.version, closing), before };
  }
}

/** Whether somebody ended it again who knew how it had been ended: the phone showed that, or it was the same person, later. */
function isKnown(tx: OrganizationTransaction, present: VisitRow, closing: Closing, over: Closing | null | undefined): boolean {
  if (over !== undefined) return over !== null && isSameClosing(present, over);
  return present.closedBy === tx.actor.personId && present.closedAt !== null && closing.closedAt >= present.closedAt;
}
