import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { crewsInScope } from '../../crews/crew-scope.js';
import { minuteIn, todayIn } from '../../organization-clock.js';
import { stops } from '../../routes/stop.repository.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import { placesOf } from '../material/plan-input-of.js';
import { TravelTimes } from '../travel/travel-times.service.js';
import { PlannedStop } from './month-plan.type.js';
import { showDay } from './show-day.js';

/**
 * The times that a day gives its stops: for every crew whose work the actor sees, or one of them. Today goes on from now; once a crew's hours are
 * over, nothing begins by night: a day that was begun tells what was done, any other stands as it was planned.
 */
@Injectable()
export class ShowTimes {
  constructor(
    private readonly gather: GatherMaterial,
    private readonly travel: TravelTimes,
  ) {}

  async run(tx: OrganizationTransaction, day: string, crewId: string | null): Promise<PlannedStop[]> {
    const scope = await crewsInScope(tx);
    const isAsked = (id: string): boolean => (!crewId || crewId === id) && (scope === null || scope.includes(id));
    const known = await this.gather.run(tx, day, day);
    const placed = known.items.filter(({ place }) => place?.day === day && isAsked(place.crewId));
    const places = placesOf(known);
    const { table } = await this.travel.run(places.positions);
    const ids = placed.flatMap(({ stopId }) => (stopId === null ? [] : [stopId]));
    const rows = new Map((await stops.ofIds(tx, ids)).map((row) => [row.id, row]));
    const now = { day: await todayIn(tx), minute: await minuteIn(tx) };
    const facts = { known, places, travel: table, rows };
    return known.crews.flatMap((crew) => {
      const items = placed.filter(({ place }) => place?.crewId === crew.id);
      const isOver = now.day === day && now.minute >= crew.dayEndsMinute;
      const done = items.filter(({ visited }) => visited);
      if (items.length === 0) return [];
      if (isOver && done.length === 0) return showDay(crew, day, items, { ...facts, now: null }).stops;
      return showDay(crew, day, isOver ? done : items, { ...facts, now }).stops;
    });
  }
}
