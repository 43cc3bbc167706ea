import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { clientOfId } from '../../../portfolio/clients/client.loader.js';
import type { WaterReportRow } from '../water-report.entity.js';

/** What a report is called in a sentence: whose it is, and of when. */
export async function nameOfReport(
  tx: OrganizationTransaction,
  { clientId, fromOn, untilOn }: Pick<WaterReportRow, 'clientId' | 'fromOn' | 'untilOn'>,
): Promise<string> {
  const client = await clientOfId.of(tx).load(clientId);
  return `${client?.name ?? 'a client'}, ${fromOn} to ${untilOn}`;
}
