import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { offerToEnter } from '@rillbook/irrigation/planning/offers/offer-to-enter.js';
import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { VersionConflict } from '../../../../platform/records/kept-records.js';
import { presentAndPlanned } from '../../../settings/facts/present-and-planned.loader.js';
import { RecordSettings } from '../../../settings/facts/record-settings.service.js';
import { keepProgram } from '../../../settings/programs/keep-program.service.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';
import type { WorkOrderRow } from '../../orders/work-order.entity.js';
import { nowIn } from '../../organization-clock.js';
import { AssignWorkOrder, type CrewAndDay } from '../assign-work-order.service.js';
import { MakeOrder } from '../make-order.service.js';

/** A controller and what it would best be set to. */
export interface PlannedController {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly plan: ControllerPlan;
  /** the first day on which it may be entered; any where it is left out */
  readonly notBefore?: string;
  /** where the page itself wrote what is to be done */
  readonly wordsOf?: 'season';
}

/** Keeps a controller's plan as its planned settings and makes the order to enter them. */
@Injectable()
export class OrderPlan {
  constructor(
    private readonly record: RecordSettings,
    private readonly make: MakeOrder,
    private readonly assign: AssignWorkOrder,
  ) {}

  async run(tx: OrganizationTransaction, planned: PlannedController, what: string, to: CrewAndDay | null): Promise<WorkOrderRow> {
    const { controllerId, propertyId, notBefore = null, wordsOf = null } = planned;
    const plannedSettingsId = await this.keepPlan(tx, planned);
    const input = { propertyId, controllerId, kind: 'adjust', what, wordsOf, notBefore };
    const made = await this.make.run(tx, input, null, { plannedSettingsId, pauseUntil: null });
    ordersOfProperty.of(tx).clear(propertyId);
    const given = to && (await this.assign.run(tx, made.id, made.version, to));
    return given && !(given instanceof VersionConflict) ? given : made;
  }

  private async keepPlan(tx: OrganizationTransaction, { controllerId, plan }: PlannedController): Promise<string> {
    const { programs } = offerToEnter(plan);
    const { kept } = await this.record.run(tx, {
      deviceRecordId: randomUUID(),
      controllerId,
      effectiveAt: await nowIn(tx),
      record: 'planned',
      state: programs.length ? 'on' : 'off',
      programs: programs.map(keepProgram).map((program) => ({ ...program, starts: [...program.starts], stations: [...program.stations] })),
    });
    presentAndPlanned.of(tx).clear(controllerId);
    return kept.id;
  }
}
