import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Position } from '@rillbook/routing/travel/great-circle-distance.js';
import { straightLineTravel, USUAL_STRAIGHT_LINE } from '@rillbook/routing/travel/straight-line-travel.js';
import type { TravelTable } from '@rillbook/routing/travel/travel-table.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { log } from '../../../../platform/problems/log.js';
import { RoutingServerFault, type ServerFault, travelByServer } from './routing-server.js';
import { TravelBasis } from './travel-basis.type.js';

/** Travel between places, and where it comes from. */
export interface KnownTravel {
  readonly table: TravelTable;
  readonly basis: TravelBasis;
}

/** How many answers of a server are kept: a month is looked at many times while it is planned. */
const KEPT_TABLES = 8;

/** A server that failed is not asked again for so long, so that each look at the month does not wait for it. [ms] */
const REST_AFTER_FAULT_MS = 60_000;

/** Travel between places: from the office's own routing server where ROUTING_SERVER names one, else estimated from straight lines. */
@Injectable()
export class TravelTimes {
  private readonly kept = new Map<string, TravelTable>();
  private lastFault: { readonly fault: ServerFault; readonly at: number } | null = null;

  async run(positions: readonly Position[], server: string | undefined = process.env['ROUTING_SERVER']): Promise<KnownTravel> {
    if (!server) return estimated(positions, null);
    const key = createHash('sha256')
      .update(JSON.stringify([server, positions]))
      .digest('hex');
    const known = this.kept.get(key);
    if (known) return { table: known, basis: byServer() };
    if (this.lastFault && performance.now() - this.lastFault.at < REST_AFTER_FAULT_MS) return estimated(positions, this.lastFault.fault);
    try {
      const table = await travelByServer(server, positions);
      this.keep(key, table);
      return { table, basis: byServer() };
    } catch (problem) {
      if (!(problem instanceof RoutingServerFault || problem instanceof DomainError)) throw problem;
      log.warn({ message: problem.message }, 'routing server');
      // A table of times that cannot be is none.
      const fault = problem instanceof RoutingServerFault ? problem.fault : 'no whole table';
      this.lastFault = { fault, at: performance.now() };
      return estimated(positions, fault);
    }
  }

  private keep(key: string, table: TravelTable): void {
    this.lastFault = null;
    this.kept.set(key, table);
    const [oldest] = this.kept.keys();
    if (this.kept.size > KEPT_TABLES && oldest !== undefined) this.kept.delete(oldest);
  }
}

const byServer = (): TravelBasis =>
  Object.assign(new TravelBasis(), {
    source: 'routing server',
    factor: null,
    kilometresPerHour: null,
    perDriveMinutes: null,
    serverFault: null,
  });

function estimated(positions: readonly Position[], serverFault: ServerFault | null): KnownTravel {
  const { factor, kilometresPerHour, perDriveS } = USUAL_STRAIGHT_LINE;
  const basis = { source: 'straight-line estimate', factor, kilometresPerHour, perDriveMinutes: perDriveS / 60, serverFault };
  return { table: straightLineTravel(positions), basis: Object.assign(new TravelBasis(), basis) };
}
