import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { meterOfId } from '../../portfolio/meters/meter.loader.js';
import { judgeRegister } from './judge-register.js';
import type { ReadingRow } from './reading.entity.js';
import { type Reading, showReading } from './reading.type.js';

/** One reading as the screens see it, judged by those before it. */
export async function showInHistory(tx: OrganizationTransaction, row: ReadingRow): Promise<Reading> {
  const meter = await meterOfId.of(tx).load(row.meterId);
  return showReading(row, await judgeRegister(tx, meter!, row));
}
