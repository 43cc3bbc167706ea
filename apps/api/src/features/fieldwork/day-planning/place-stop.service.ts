import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../platform/problems/constraint-problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { RouteRow } from '../routes/route.entity.js';
import { routes } from '../routes/route.repository.js';
import { StopRow } from '../routes/stop.entity.js';
import { stops } from '../routes/stop.repository.js';

/** A property in a crew's day. */
export interface Place {
  readonly crewId: string;
  readonly day: string;
  readonly propertyId: string;
}

/** Finds or makes the route of a crew and day, and the stop of a property on it: a new stop is the last. */
@Injectable()
export class PlaceStop {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, place: Place): Promise<StopRow> {
    const route = await this.route(tx, place);
    // Held until the end, so that two stops placed at the same time do not get the same position.
    await this.records.change(tx, RouteRow, route.id, route.version, {});
    const find = () => stops.ofRouteAndProperty(tx, route.id, place.propertyId);
    const present = await find();
    if (present && !present.retiredAt) return present;
    const position = ((await stops.ofRoutes(tx, [route.id])).at(-1)?.position ?? 0) + 1;
    if (!present)
      return this.madeOnce(
        tx,
        'stop_once',
        () => this.records.create(tx, StopRow, { routeId: route.id, propertyId: place.propertyId, position }),
        find,
      );
    const again = await this.records.change(tx, StopRow, present.id, present.version, { retiredAt: null, position });
    // Another transaction put it back first: then it is there.
    return again instanceof VersionConflict ? present : again;
  }

  private async route(tx: OrganizationTransaction, { crewId, day }: Place): Promise<RouteRow> {
    const find = () => routes.ofCrewAndDay(tx, crewId, day);
    return (await find()) ?? this.madeOnce(tx, 'route_once', () => this.records.create(tx, RouteRow, { crewId, day, note: null }), find);
  }

  /** Makes a row, or finds the one that another transaction made at the same time. */
  private async madeOnce<Row>(
    tx: OrganizationTransaction,
    constraint: string,
    make: () => Promise<Row>,
    find: () => Promise<Row | null>,
  ): Promise<Row> {
    try {
      return await tx.attempt(make);
    } catch (problem) {
      const present = brokenConstraint(problem)?.name === constraint ? await find() : null;
      if (!present) throw problem;
      return present;
    }
  }
}
