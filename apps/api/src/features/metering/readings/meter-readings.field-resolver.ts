import type { VolumeUnit } from '@rillbook/units/volume.js';
import { Args, Int, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Meter } from '../../portfolio/meters/meter.type.js';
import { judgeNewest } from '../judging/judge-newest.js';
import { newestKey, newestReadings } from './reading.loader.js';
import { Reading, showReading } from './reading.type.js';
import { READINGS_TO_JUDGE_BY } from '@rillbook/metering/intervals/register-history.js';

const MOST = 500;

/** A meter's readings, newest first; a replaced one stands below the one that replaced it. */
@Resolver(() => Meter)
export class MeterReadingsResolver {
  @ResolveField(() => [Reading])
  async readings(
    @Tx() tx: OrganizationTransaction,
    @Parent() meter: Meter,
    @Args('first', { type: () => Int, defaultValue: 24 }) first: number,
  ): Promise<Reading[]> {
    if (first < 1 || first > MOST) throw platformProblems.valueRefused({ field: 'first', found: first, expected: `1 to ${MOST}` });
    const rows = await newestReadings.of(tx).load(newestKey({ meterId: meter.id, most: first + READINGS_TO_JUDGE_BY }));
    const judged = judgeNewest({ ...meter, unit: meter.unit as VolumeUnit }, rows, rows.length < first + READINGS_TO_JUDGE_BY);
    return rows.slice(0, first).map((row) => showReading(row, judged.get(row.id)!));
  }
}
