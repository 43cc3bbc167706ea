import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { requireStop, type StopOnRoute } from '../../routes/require-stop.js';
import type { VisitRow } from '../visit.entity.js';
import type { VisitInput } from '../visit.input.js';
import { visits } from '../visit.repository.js';
import type { ArrivalRow } from './arrival.entity.js';
import { arrivals } from './arrival.repository.js';
import { requirePossibleTime } from './require-possible-time.js';
import { requireVisit, STANDS } from './require-visit.js';

type Began = Pick<ArrivalRow, 'id' | 'arrivedAt'>;

/**
 * Begins the visit of a stop, or joins it where another phone has begun it: a stop has one visit, and each phone speaks of it by the name that it
 * gave. The same arrival sent again is the same. A stop taken off its route meanwhile was visited all the same.
 */
@Injectable()
export class Arrive {
  async run(tx: OrganizationTransaction, input: VisitInput): Promise<VisitRow> {
    if (!isUuid(input.deviceRecordId))
      throw platformProblems.valueRefused({ field: 'deviceRecordId', found: input.deviceRecordId, expected: 'a UUID made by the phone' });
    await requirePossibleTime(tx, 'arrivedAt', input.arrivedAt);
    const { stop, route } = await requireStop(tx, input.stopId);
    await arrivals.hold(tx, stop.id);
    const id = input.deviceRecordId.toLowerCase();
    const known = await arrivals.ofName(tx, id);
    if (known) return this.kept(tx, known, input);
    const visit = await arrivals.visitOfStop(tx, stop.id);
    const { arrivedAt } = input;
    const joined = visit ? await this.join(tx, visit, arrivedAt) : await this.begin(tx, { stop, route }, { id, arrivedAt });
    await arrivals.insert(tx, {
      organizationId: tx.organizationId,
      id,
      visitId: joined.id,
      personId: tx.actor.personId,
      arrivedAt,
      withdrawnAt: null,
    });
    return joined;
  }

  private async begin(tx: OrganizationTransaction, { stop, route }: StopOnRoute, { id, arrivedAt }: Began): Promise<VisitRow> {
    const row = {
      organizationId: tx.organizationId,
      // The phone speaks of the visit by this name before anybody answers.
      id,
      propertyId: stop.propertyId,
      stopId: stop.id,
      crewId: route.crewId,
      arrivedAt,
      closedAt: null,
      doneNote: null,
      leftNote: null,
      personId: tx.actor.personId,
      deviceRecordId: id,
      closedBy: null,
      ...STANDS,
      workedMinutes: null,
      materials: [],
      version: 1,
    };
    await visits.insert(tx, row);
    return row;
  }

  /** The visit began when the first of them came, whichever phone is heard first; one that was taken back begins with who comes then. */
  private async join(tx: OrganizationTransaction, visit: VisitRow, arrivedAt: Date): Promise<VisitRow> {
    if (visit.withdrawnAt) return this.again(tx, visit, arrivedAt);
    if (arrivedAt >= visit.arrivedAt) return visit;
    await visits.update(tx, visit.id, { arrivedAt });
    return { ...visit, arrivedAt };
  }

  private async again(tx: OrganizationTransaction, visit: VisitRow, arrivedAt: Date): Promise<VisitRow> {
    const values = { ...STANDS, arrivedAt, personId: tx.actor.personId, version: visit.version + 1 };
    await visits.update(tx, visit.id, values);
    return { ...visit, ...values };
  }

  private async kept(tx: OrganizationTransaction, { id, visitId, arrivedAt }: ArrivalRow, input: VisitInput): Promise<VisitRow> {
    const visit = await requireVisit(tx, visitId);
    if (visit.stopId === input.stopId.toLowerCase() && arrivedAt.getTime() === input.arrivedAt.getTime()) return visit;
    throw fieldworkProblems.visitConflict({ deviceRecordId: id, visitId, stopId: visit.stopId, arrivedAt: arrivedAt.toISOString() });
  }
}
