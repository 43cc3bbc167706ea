import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../platform/problems/constraint-problems.js';
import { KeptRecords } from '../../../platform/records/kept-records.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { fieldworkProblems } from '../fieldwork.problems.js';
import { notToExceedOfProperty } from '../orders/not-to-exceed.loader.js';
import { exceeds } from '../orders/work-order-cost.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';
import type { OrderSubject } from '../orders/work-order.repository.js';
import type { WorkOrderInput } from '../orders/work-order.input.js';
import { nowIn } from '../organization-clock.js';
import { PlanSettings } from '../planned-settings/plan-settings.service.js';
import { type OrderValues, orderValues } from './order-values.js';

/** What is to be set: planned settings, or a rain pause until an instant. */
export interface ToSet {
  readonly plannedSettingsId: string | null;
  readonly pauseUntil: Date | null;
}

/** What is wished: the work itself, or an offer of it first. */
export type Wish = 'work' | 'offer';

/**
 * Keeps a new work order: open, or waiting for approval where it costs more than the client lets be spent without asking, or where an
 * offer of it is wanted. An adjustment for which no settings are planned yet plans them.
 */
@Injectable()
export class MakeOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly plan: PlanSettings,
  ) {}

  /** Plans what an adjustment will enter, before a deed writes anything: its connection is free meanwhile. */
  async planAhead(tx: OrganizationTransaction, { kind, controllerId, settings }: WorkOrderInput): Promise<void> {
    if (kind === 'adjust' && controllerId && isUuid(controllerId)) await this.plan.ahead(tx, controllerId, settings ?? null);
  }

  async run(
    tx: OrganizationTransaction,
    input: WorkOrderInput,
    finding: (OrderSubject & { readonly id: string }) | null,
    toSet: ToSet | null = null,
    wish: Wish = 'work',
  ): Promise<WorkOrderRow> {
    const values = await orderValues(tx, input, finding);
    const waits = wish === 'offer' || exceeds(values, await notToExceedOfProperty.of(tx).load(values.propertyId));
    const { plannedSettingsId, pauseUntil } = toSet ?? (await this.toSet(tx, values, input));
    const state = waits ? 'waiting for approval' : 'open';
    try {
      return await tx.attempt(async () =>
        this.records.create(tx, WorkOrderRow, {
          ...values,
          ...(input.deviceRecordId && { id: input.deviceRecordId.toLowerCase() }),
          findingId: finding?.id ?? null,
          plannedSettingsId,
          isOffer: wish === 'offer',
          pauseUntil,
          state,
          createdAt: await nowIn(tx),
        }),
      );
    } catch (problem) {
      if (finding && brokenConstraint(problem)?.name === 'work_order_one_open_per_finding')
        throw fieldworkProblems.workOrderExists({ findingId: finding.id, kind: values.kind });
      throw problem;
    }
  }

  private async toSet(tx: OrganizationTransaction, { kind, controllerId }: OrderValues, { settings }: WorkOrderInput): Promise<ToSet> {
    const isAdjustment = kind === 'adjust' && controllerId !== null;
    return { plannedSettingsId: isAdjustment ? await this.plan.run(tx, controllerId, settings ?? null) : null, pauseUntil: null };
  }
}
