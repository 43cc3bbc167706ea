import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { above, judgeValues } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { ZoneRow } from './zone.entity.js';
import { zones } from './zone.repository.js';

/** What a test at the zone told of it. */
export type Measured = { readonly flowLPerMin: number } | { readonly duLq: number; readonly precipMmPerH?: number };

/** Puts on a zone's record what a test told, whoever changed other things of it meanwhile. */
@Injectable()
export class MeasureZone {
  constructor(private readonly records: KeptRecords) {}

  /** @returns the zone as it was before */
  async run(tx: OrganizationTransaction, id: string, measured: Measured): Promise<ZoneRow> {
    judgeValues(measured, {
      flowLPerMin: above(0, 40_000, 'L/min'),
      duLq: above(0, 1),
      precipMmPerH: above(0, 1300, 'mm/h'),
    });
    const before = await zones.locked(tx, id);
    if (!before) throw platformProblems.notFound({ thing: 'zone', id });
    const values = 'flowLPerMin' in measured ? { ...measured, flowSource: 'measured' as const } : measured;
    const changed = await this.records.change(tx, ZoneRow, id, before.version, values);
    if (changed instanceof VersionConflict) throw new Error('a locked zone was changed');
    return before;
  }
}
