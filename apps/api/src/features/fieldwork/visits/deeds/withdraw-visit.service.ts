import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import type { VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';
import { arrivals } from './arrival.repository.js';
import { requireOwn } from './require-own.js';
import { saidAt } from './require-possible-time.js';
import { requireVisit } from './require-visit.js';
import { workOfVisit } from './work-of-visit.repository.js';

/**
 * Takes back an arrival by mistake. The visit is kept as withdrawn, and counts nowhere; what somebody did there meanwhile, or that another person
 * came, keeps it. Taken back again it is the same.
 */
@Injectable()
export class WithdrawVisit {
  async run(tx: OrganizationTransaction, id: string, savedAt?: Date): Promise<VisitRow> {
    const visit = await requireVisit(tx, id);
    if (visit.withdrawnAt) return visit;
    await requireOwn(tx, visit);
    const isEmpty = visit.closedAt === null && !(await workOfVisit.isThere(tx, visit.id));
    if (!isEmpty || (await arrivals.hasOtherCome(tx, visit.id, tx.actor.personId)))
      throw fieldworkProblems.visitNotEmpty({ visitId: visit.id });
    const values = { withdrawnAt: await saidAt(tx, savedAt), withdrawnBy: tx.actor.personId, version: visit.version + 1 };
    await visits.update(tx, visit.id, values);
    return { ...visit, ...values };
  }
}
