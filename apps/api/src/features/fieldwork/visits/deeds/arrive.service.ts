import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../../platform/problems/constraint-problems.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { requireStop } from '../../routes/require-stop.js';
import type { VisitRow } from '../visit.entity.js';
import type { VisitInput } from '../visit.input.js';
import { visits } from '../visit.repository.js';

const ONCE: ReadonlySet<string> = new Set(['visit_device_record_once', 'visit_key']);

/** Begins a visit. The phone names it: the same arrival sent again is the same visit. A stop taken off its route meanwhile was visited all the same. */
@Injectable()
export class Arrive {
  async run(tx: OrganizationTransaction, input: VisitInput): Promise<VisitRow> {
    if (!isUuid(input.deviceRecordId))
      throw platformProblems.valueRefused({ field: 'deviceRecordId', found: input.deviceRecordId, expected: 'a UUID made by the phone' });
    const { stop, route } = await requireStop(tx, input.stopId);
    const row = {
      organizationId: tx.organizationId,
      // The phone speaks of the visit by this name before anybody answers.
      id: input.deviceRecordId,
      propertyId: stop.propertyId,
      stopId: stop.id,
      crewId: route.crewId,
      arrivedAt: input.arrivedAt,
      closedAt: null,
      doneNote: null,
      leftNote: null,
      personId: tx.actor.personId,
      deviceRecordId: input.deviceRecordId,
      closedBy: null,
      workedMinutes: null,
      materials: [],
      version: 1,
    };
    try {
      await tx.attempt(() => visits.insert(tx, row));
      return row;
    } catch (problem) {
      if (!ONCE.has(brokenConstraint(problem)?.name ?? '')) throw problem;
      return this.kept(tx, input);
    }
  }

  private async kept(tx: OrganizationTransaction, input: VisitInput): Promise<VisitRow> {
    const kept = (await visits.ofDeviceRecord(tx, input.deviceRecordId))!;
    if (kept.stopId === input.stopId && kept.arrivedAt.getTime() === input.arrivedAt.getTime()) return kept;
    throw fieldworkProblems.visitConflict({
      deviceRecordId: input.deviceRecordId,
      visitId: kept.id,
      stopId: kept.stopId,
      arrivedAt: kept.arrivedAt.toISOString(),
    });
  }
}
