import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import type { VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';
import type { ArrivalRow } from './arrival.entity.js';
import { arrivals } from './arrival.repository.js';
import { requireOwn } from './require-own.js';
import { saidAt } from './require-possible-time.js';
import { requireVisit } from './require-visit.js';
import { workOfVisit } from './work-of-visit.repository.js';

/**
 * Takes back an arrival by mistake. The visit stands with whoever else came, from when the first of them did; where nobody did, it is kept as
 * withdrawn, and counts nowhere. What somebody did there keeps it. Taken back again it is the same.
 */
@Injectable()
export class WithdrawVisit {
  /** @param id - The name that the phone gave its arrival. */
  async run(tx: OrganizationTransaction, id: string, savedAt?: Date): Promise<VisitRow> {
    const visit = await this.held(tx, id);
    const arrival = await arrivals.ofName(tx, id);
    if (visit.withdrawnAt) return visit;
    await requireOwn(tx, visit);
    if (visit.closedAt || (await isOthersOrWorked(tx, visit, arrival))) throw fieldworkProblems.visitNotEmpty({ visitId: visit.id });
    if (arrival?.withdrawnAt) return visit;
    const withdrawnAt = await saidAt(tx, savedAt);
    if (arrival) await arrivals.withdraw(tx, arrival.id, withdrawnAt);
    const first = await arrivals.firstStanding(tx, visit.id);
    if (!first && (await workOfVisit.isThere(tx, visit.id))) throw fieldworkProblems.visitNotEmpty({ visitId: visit.id });
    const stands = first ? { arrivedAt: first.arrivedAt, personId: first.personId } : { withdrawnAt, withdrawnBy: tx.actor.personId };
    const values = { ...stands, version: visit.version + 1 };
    await visits.update(tx, visit.id, values);
    return { ...visit, ...values };
  }

  /** Nobody arrives at its stop meanwhile. */
  private async held(tx: OrganizationTransaction, id: string): Promise<VisitRow> {
    const own = (await arrivals.ofName(tx, id))?.visitId ?? id;
    const [seen] = await visits.seen(tx, { ids: [own] });
    if (seen?.stopId) await arrivals.hold(tx, seen.stopId);
    return requireVisit(tx, id);
  }
}

/** Whether somebody else told of the arrival, or who told of it did something at the visit. */
async function isOthersOrWorked(tx: OrganizationTransaction, { id }: VisitRow, arrival: ArrivalRow | null): Promise<boolean> {
  const { personId } = tx.actor;
  if (arrival && arrival.personId !== personId) return true;
  return personId !== null && workOfVisit.isOf(tx, id, personId);
}
