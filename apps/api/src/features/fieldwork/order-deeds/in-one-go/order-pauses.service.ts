import { Injectable } from '@nestjs/common';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { controllerOfId } from '../../../portfolio/controllers/controller.loader.js';
import { inScope } from '../../../portfolio/properties/property-scope.service.js';
import { AssignWorkOrder, type CrewAndDay } from '../assign-work-order.service.js';
import { MakeOrder } from '../make-order.service.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';
import { WorkOrderRow } from '../../orders/work-order.entity.js';
import { hasEnded } from '../../orders/work-order-kinds.js';
import { nowIn } from '../../organization-clock.js';
import type { PauseInput } from './order-pauses.input.js';

const MOST = 200;
/** A pause that is longer is a shut-down. An assumption, as the list has it. */
const LONGEST_DAYS = 15;
/** Opening a cabinet and turning one dial: common practice. [min] */
const MINUTES = 5;

/** Makes the work to pause controllers after rain, each until its own day, and gives it out. */
@Injectable()
export class OrderPauses {
  constructor(
    private readonly records: KeptRecords,
    private readonly make: MakeOrder,
    private readonly assign: AssignWorkOrder,
  ) {}

  /** @returns one order for each controller; one that has such an order already keeps it, until the end that is wished now */
  async run(tx: OrganizationTransaction, pauses: readonly PauseInput[], to: CrewAndDay | null): Promise<WorkOrderRow[]> {
    if (pauses.length > MOST)
      throw platformProblems.valueRefused({ field: 'pauses', found: pauses.length, expected: `at most ${MOST} at a time` });
    const controllers = await controllersOf(tx, pauses);
    const now = await nowIn(tx);
    pauses.forEach(({ until }, at) => judgeEnd(until, now, at));
    const orders: WorkOrderRow[] = [];
    for (const pause of pauses) orders.push(await this.orderFor(tx, pause, controllers.get(pause.controllerId)!, to));
    return orders;
  }

  private async orderFor(
    tx: OrganizationTransaction,
    { controllerId, until }: PauseInput,
    { propertyId, name }: Named,
    to: CrewAndDay | null,
  ): Promise<WorkOrderRow> {
    const before = (await ordersOfProperty.of(tx).load(propertyId)).find(
      (each) => each.controllerId === controllerId.toLowerCase() && each.pauseUntil !== null && !hasEnded(each.state),
    );
    const order = before
      ? await this.until(tx, before, until)
      : await this.make.run(tx, { propertyId, controllerId, kind: 'adjust', what: name, estimateMinutes: MINUTES }, null, {
          plannedSettingsId: null,
          pauseUntil: until,
        });
    const given = to && !order.stopId ? await this.assign.run(tx, order.id, order.version, to) : order;
    ordersOfProperty.of(tx).clear(propertyId);
    return given instanceof VersionConflict ? order : given;
  }

  private async until(tx: OrganizationTransaction, order: WorkOrderRow, until: Date): Promise<WorkOrderRow> {
    if (order.pauseUntil?.getTime() === until.getTime()) return order;
    const changed = await this.records.change(tx, WorkOrderRow, order.id, order.version, { pauseUntil: until });
    return changed instanceof VersionConflict ? order : changed;
  }
}

interface Named {
  readonly propertyId: string;
  readonly name: string;
}

/** The controllers to be paused; one that is not there, or not to be seen, is not found. */
async function controllersOf(tx: OrganizationTransaction, pauses: readonly PauseInput[]): Promise<Map<string, Named>> {
  const controllers = new Map<string, Named>();
  for (const { controllerId } of pauses) {
    const controller = isUuid(controllerId) ? await controllerOfId.of(tx).load(controllerId.toLowerCase()) : null;
    if (!controller || controller.retiredAt) throw platformProblems.notFound({ thing: 'controller', id: controllerId });
    controllers.set(controllerId, controller);
  }
  const seen = await inScope(tx, [...new Set([...controllers.values()].map(({ propertyId }) => propertyId))]);
  const stranger = pauses.find(({ controllerId }) => !seen.has(controllers.get(controllerId)!.propertyId));
  if (stranger) throw platformProblems.notFound({ thing: 'controller', id: stranger.controllerId });
  return controllers;
}

function judgeEnd(until: Date, now: Date, at: number): void {
  const latest = Temporal.Instant.fromEpochMilliseconds(now.getTime()).add({ hours: 24 * LONGEST_DAYS });
  if (until > now && until.getTime() <= latest.epochMilliseconds) return;
  throw platformProblems.valueRefused({
    field: `pauses[${at}].until`,
    found: until.toISOString(),
    expected: `a time from now on, ${LONGEST_DAYS} days at most: a longer stop is a shut-down and not a rain pause`,
  });
}
