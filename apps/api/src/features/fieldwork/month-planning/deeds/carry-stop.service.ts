import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { requireComingDay } from '../../crews/crew-and-day.js';
import { crewOfId } from '../../crews/crew.loader.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { todayIn } from '../../organization-clock.js';
import { requireStop, type StopOnRoute } from '../../routes/require-stop.js';
import { routes } from '../../routes/route.repository.js';
import { StopRow } from '../../routes/stop.entity.js';
import { stops } from '../../routes/stop.repository.js';
import { material } from '../material/material.repository.js';
import { monthPlans } from '../runs/month-plan.repository.js';
import { SendItem } from './send-item.service.js';

/** Where a stop is carried to. */
export interface Carried {
  readonly crewId: string;
  readonly day: string;
  /** from 1; past the last is the last */
  readonly position: number;
  readonly locked: boolean;
}

/** Carries a stop to another crew, day or position by hand, with all that is to be done there; nothing else moves but to make room. While a month is planned it waits. */
@Injectable()
export class CarryStop {
  constructor(
    private readonly records: KeptRecords,
    private readonly send: SendItem,
  ) {}

  async run(tx: OrganizationTransaction, id: string, version: number, to: Carried): Promise<StopRow> {
    // A planning under way has read what is locked, and would carry away what a hand locks now.
    await monthPlans.oneAtATime(tx);
    const found = await requireStop(tx, id);
    const { stop, route } = found;
    const held = await this.records.change(tx, StopRow, stop.id, version, {});
    if (held instanceof VersionConflict) throw fieldworkProblems.stopMovedMeanwhile({ stopId: stop.id, changedBy: held.changedBy });
    if (held.retiredAt) throw platformProblems.notFound({ thing: 'stop', id });
    const crew = await crewOfId.of(tx).load(to.crewId);
    if (!crew || crew.retiredAt) throw platformProblems.notFound({ thing: 'crew', id: to.crewId });
    if (to.position < 1) throw platformProblems.valueRefused({ field: 'position', found: to.position, expected: '1 or more' });
    const stays = route.crewId === to.crewId && route.day === to.day;
    const carried = stays ? stop : await this.carry(tx, found, to);
    const others = (await stops.ofRoutes(tx, [carried.routeId])).map((other) => other.id).filter((other) => other !== carried.id);
    await stops.number(tx, carried.routeId, others.toSpliced(to.position - 1, 0, carried.id));
    const kept = await this.send.lock(tx, { ...carried, position: Math.min(to.position, others.length + 1) }, to.locked);
    return kept;
  }

  private async carry(tx: OrganizationTransaction, { stop, route }: StopOnRoute, to: Carried): Promise<StopRow> {
    const present = (await material.stops(tx, route.day, route.day)).find(({ id }) => id === stop.id);
    const orders = present?.orders.filter(({ state }) => state !== 'done') ?? [];
    // What was left undone on a day that is over goes on by itself; the visit stays where it was.
    const goesOn = orders.length > 0 && route.day < (await todayIn(tx));
    if (!present || (present.visited && !goesOn)) throw fieldworkProblems.stopVisited({ stopId: stop.id });
    if (!(await stoodThere(tx, stop.propertyId, to))) await requireComingDay(tx, to.day);
    return (await this.send.run(tx, { propertyId: stop.propertyId, stopId: stop.id, orders }, { crewId: to.crewId, day: to.day }))!;
  }
}

/** Whether the property had a stop there before: carried by mistake, it goes back to where it stood. */
async function stoodThere(tx: OrganizationTransaction, propertyId: string, { crewId, day }: Carried): Promise<boolean> {
  const route = await routes.ofCrewAndDay(tx, crewId, day);
  return route !== null && (await stops.ofRouteAndProperty(tx, route.id, propertyId)) !== null;
}
