import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { offerToEnter } from '@rillbook/irrigation/planning/offers/offer-to-enter.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { VersionConflict } from '../../../../platform/records/kept-records.js';
import { inScope } from '../../../portfolio/properties/property-scope.service.js';
import { keepProgram } from '../../../settings/programs/keep-program.service.js';
import { presentAndPlanned } from '../../../settings/facts/present-and-planned.loader.js';
import { RecordSettings } from '../../../settings/facts/record-settings.service.js';
import { BreakersOfRules, type Breaker } from '../../../plans/rule-change/breakers-of-rules.service.js';
import { AssignWorkOrder, type CrewAndDay } from '../assign-work-order.service.js';
import { MakeOrder } from '../make-order.service.js';
import type { WorkOrderRow } from '../../orders/work-order.entity.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';
import { nowIn } from '../../organization-clock.js';

const MOST = 20;
const ENDED = ['done', 'dropped'];

/** What is to be ordered: at which properties, since when the rule holds, and why it is done. */
export interface RuleChangeOrder {
  readonly propertyIds: readonly string[];
  readonly month: string;
  readonly what: string;
  readonly to: CrewAndDay | null;
}

/** Makes the work that brings controllers within the rules in force: new settings for each that breaks one, and the order to enter them. */
@Injectable()
export class OrderRuleChange {
  constructor(
    private readonly breakers: BreakersOfRules,
    private readonly record: RecordSettings,
    private readonly make: MakeOrder,
    private readonly assign: AssignWorkOrder,
  ) {}

  /** @returns one order for each controller that breaks a rule; one that has such an order already keeps it */
  async run(tx: OrganizationTransaction, order: RuleChangeOrder): Promise<WorkOrderRow[]> {
    const { propertyIds, month } = order;
    if (propertyIds.length > MOST)
      throw platformProblems.valueRefused({ field: 'propertyIds', found: propertyIds.length, expected: `at most ${MOST} at a time` });
    const seen = await inScope(tx, propertyIds);
    const stranger = propertyIds.find((id) => !seen.has(id.toLowerCase()));
    if (stranger !== undefined) throw platformProblems.notFound({ thing: 'property', id: stranger });
    const orders: WorkOrderRow[] = [];
    for (const breaker of await this.breakers.run(tx, [...seen], month)) orders.push(await this.orderFor(tx, breaker, order));
    return orders;
  }

  private async orderFor(tx: OrganizationTransaction, breaker: Breaker, { what, to }: RuleChangeOrder): Promise<WorkOrderRow> {
    const { controllerId, propertyId } = breaker;
    const before = (await ordersOfProperty.of(tx).load(propertyId)).find(
      (each) => each.controllerId === controllerId && each.kind === 'adjust' && each.what === what && !ENDED.includes(each.state),
    );
    if (before) return before;
    const plannedSettingsId = await this.keepPlan(tx, breaker);
    const made = await this.make.run(tx, { propertyId, controllerId, kind: 'adjust', what }, null, plannedSettingsId);
    ordersOfProperty.of(tx).clear(propertyId);
    const given = to && (await this.assign.run(tx, made.id, made.version, to));
    return given && !(given instanceof VersionConflict) ? given : made;
  }

  private async keepPlan(tx: OrganizationTransaction, { controllerId, plan }: Breaker): Promise<string> {
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
