import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../../platform/problems/constraint-problems.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { requireStop } from '../../routes/require-stop.js';
import type { VisitRow } from '../visit.entity.js';
import type { VisitInput } from '../visit.input.js';
import { visits } from '../visit.repository.js';

/** Begins a visit. The phone names it: the same arrival sent again is the same visit. A stop taken off its route meanwhile was visited all the same. */
@Injectable()
export class Arrive {
  async run(tx: OrganizationTransaction, input: VisitInput): Promise<VisitRow> {
    const { stop, route } = await requireStop(tx, input.stopId);
    const row = {
      organizationId: tx.organizationId,
      id: randomUUID(),
      propertyId: stop.propertyId,
      stopId: stop.id,
      crewId: route.crewId,
      arrivedAt: input.arrivedAt,
      closedAt: null,
      doneNote: null,
      leftNote: null,
      personId: tx.actor.personId,
      deviceRecordId: input.deviceRecordId,
      version: 1,
    };
    try {
      await tx.attempt(() => visits.insert(tx, row));
      return row;
    } catch (problem) {
      if (brokenConstraint(problem)?.name !== 'visit_device_record_once') throw problem;
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
