import { Injectable } from '@nestjs/common';
import { crewPace } from '@rillbook/routing/day/crew-pace.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { grouped } from '../../../../platform/graphql/loader.js';
import { todayIn } from '../../organization-clock.js';
import { crews } from '../../crews/crew.repository.js';
import { dueVisits } from './due-visits.js';
import { material, type MaterialProperty, type MaterialStop } from './material.repository.js';
import type { ItemProperty, PlanItem, PlanMaterial } from './plan-item.js';

/** Gathers what a stretch of days is planned from: stops that are there or were missed, open work, due visits, crews and their pace. */
@Injectable()
export class GatherMaterial {
  async run(tx: OrganizationTransaction, from: string, until: string): Promise<PlanMaterial> {
    const today = await todayIn(tx);
    const found = await material.stops(tx, from < today ? from : today, until);
    const missed = await material.missed(tx, from < today ? from : today);
    const stops = [...missed, ...found.filter((stop) => stop.day >= from)].map((stop) => (stop.day < from ? leftOver(stop) : stop));
    const open = await material.openOrders(tx, from);
    const ids = [...stops, ...open].map(({ propertyId }) => propertyId);
    const soon = found.filter(({ day }) => day >= today && day < from);
    const rows = withStopsBefore(await material.properties(tx, ids), soon);
    const visits = grouped(await material.timedVisits(tx, from), ({ crewId }) => crewId);
    const crewRows = await crews.inUse(tx, null);
    const standing = itemsOfStops(stops, rows, { from: from > today ? from : today, until });
    const waiting = open.map(({ propertyId, notBefore, orders }) => ({
      ...nowhere(openOrdersId(propertyId, notBefore), propertyId),
      orders,
    }));
    return {
      from,
      until,
      items: [...standing.items, ...withVisits(waiting, standing.due)],
      properties: new Map(rows.map((row) => [row.id, propertyOf(row)])),
      crews: crewRows,
      pace: new Map(crewRows.map(({ id }) => [id, crewPace(visits.get(id) ?? [])])),
    };
  }
}

/** A stop from today on, but before the days that are planned, is the visit that it will be. */
function withStopsBefore(rows: readonly MaterialProperty[], stops: readonly MaterialStop[]): readonly MaterialProperty[] {
  const planned = new Map(stops.map(({ propertyId, day }) => [propertyId, day]));
  return rows.map((row) => ({ ...row, lastVisit: planned.get(row.id) ?? row.lastVisit }));
}

/** What is still to be done of a stop whose day is over: also where somebody came, and had to leave it. */
const leftOver = (stop: MaterialStop): MaterialStop => ({
  ...stop,
  visited: false,
  came: null,
  orders: stop.orders.filter(({ state }) => state === 'given out'),
});

/** Work that must wait is an item of its own, so that nothing waits with it. */
const openOrdersId = (propertyId: string, notBefore: string | null): string =>
  notBefore === null ? `orders ${propertyId}` : `orders ${propertyId} from ${notBefore}`;

const nowhere = (id: string, propertyId: string): PlanItem => ({
  id,
  propertyId,
  stopId: null,
  place: null,
  locked: false,
  visited: false,
  came: null,
  orders: [],
  visitDueOn: null,
});

interface DueVisit {
  readonly propertyId: string;
  readonly day: string;
}

/** Stops as items. Each stop of a property counts for its next due visit; the visits that are left over are due without a stop. */
function itemsOfStops(
  stops: readonly MaterialStop[],
  rows: readonly MaterialProperty[],
  { from, until }: { readonly from: string; readonly until: string },
): { readonly items: readonly PlanItem[]; readonly due: readonly DueVisit[] } {
  const due = new Map(
    rows.map(({ id, everyDays, lastVisit }) => [id, everyDays === null ? [] : [...dueVisits(everyDays, lastVisit, from, until)]]),
  );
  const items = stops.map(({ id, propertyId, crewId, day, position, locked, visited, came, orders }): PlanItem => {
    const visitDueOn = visited || day < from ? null : (due.get(propertyId)?.shift() ?? null);
    return { id: `stop ${id}`, propertyId, stopId: id, place: { crewId, day, position }, locked, visited, came, orders, visitDueOn };
  });
  return { items, due: [...due].flatMap(([propertyId, days]) => days.map((day) => ({ propertyId, day }))) };
}

/** Open work takes the property's first due visit along; the others are items of their own. */
function withVisits(waiting: readonly PlanItem[], due: readonly DueVisit[]): readonly PlanItem[] {
  const left = [...due];
  const items = waiting.map((item) => {
    const at = left.findIndex(({ propertyId }) => propertyId === item.propertyId);
    return at < 0 ? item : { ...item, visitDueOn: (left.splice(at, 1)[0] as DueVisit).day };
  });
  return [...items, ...left.map(({ propertyId, day }) => ({ ...nowhere(`visit ${propertyId} ${day}`, propertyId), visitDueOn: day }))];
}

const propertyOf = ({ id, latitude, longitude, everyDays, visitMinutes, skills, hours }: MaterialProperty): ItemProperty => ({
  id,
  position: latitude === null || longitude === null ? null : { latitude, longitude },
  everyDays,
  visitMinutes,
  skills: skills ?? [],
  hours: hours ?? [],
});
