import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { VisitRow } from '../visit.entity.js';
import { CloseVisit, type Closing, isSameClosing } from './close-visit.service.js';
import { requireVisit } from './require-visit.js';

/** A visit that was ended, and as another person had ended it before where that was something else. */
export interface EndedVisit {
  readonly visit: VisitRow;
  readonly before: VisitRow | null;
}

/** Ends a visit as a phone tells it, in the order in which phones are heard: the last word stands, and the one before it is told. */
@Injectable()
export class EndVisit {
  constructor(private readonly closing: CloseVisit) {}

  async run(tx: OrganizationTransaction, id: string, closing: Closing): Promise<EndedVisit> {
    const present = await requireVisit(tx, id);
    const isOthers = present.closedAt !== null && present.closedBy !== tx.actor.personId;
    const before = isOthers && !isSameClosing(present, closing) ? present : null;
    return { visit: await this.closing.run(tx, id, present.version, closing), before };
  }
}
