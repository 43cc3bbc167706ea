import { randomUUID } from 'node:crypto';
import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { ReportEditionRow } from './report-edition.entity.js';
import { WaterReportRow } from './water-report.entity.js';

/** All SQL of water reports. */
export const waterReports = {
  /** Those in use, the newest period first; for a member of role client those that were sent to them. */
  inUse(tx: OrganizationTransaction): Promise<WaterReportRow[]> {
    const own = tx.actor.role === 'client' ? { clientId: tx.actor.clientId!, state: 'sent' as const } : {};
    return tx.of(WaterReportRow).find({
      where: { organizationId: tx.organizationId, retiredAt: IsNull(), ...own },
      order: { untilOn: 'DESC', fromOn: 'ASC', id: 'ASC' },
    });
  },

  /** One that the actor may see. */
  async one(tx: OrganizationTransaction, id: string): Promise<WaterReportRow | null> {
    if (!isUuid(id)) return null;
    const own = tx.actor.role === 'client' ? { clientId: tx.actor.clientId!, state: 'sent' as const } : {};
    return tx.of(WaterReportRow).findOneBy({ organizationId: tx.organizationId, id, retiredAt: IsNull(), ...own });
  },

  /** Those of some ids that the actor may see. */
  some(tx: OrganizationTransaction, ids: readonly string[]): Promise<WaterReportRow[]> {
    const own = tx.actor.role === 'client' ? { clientId: tx.actor.clientId!, state: 'sent' as const } : {};
    return tx.of(WaterReportRow).findBy({ organizationId: tx.organizationId, id: In(ids.filter(isUuid)), retiredAt: IsNull(), ...own });
  },

  /** A draft for a client and period, where there is no report in use yet, sent or not; gives how many were made. */
  async draft(tx: OrganizationTransaction, draft: Pick<WaterReportRow, 'id' | 'clientId' | 'fromOn' | 'untilOn'>): Promise<number> {
    const rows = await tx.query<{ id: string }>(
      `insert into water_report (organization_id, id, client_id, from_on, until_on) select $1, $2, $3, $4::date, $5::date
        where not exists (select from water_report where organization_id = $1 and client_id = $3 and property_id is null and (from_on, until_on) = ($4::date, $5::date) and retired_at is null)
        on conflict (organization_id, client_id, property_id, from_on, until_on) where retired_at is null and state <> 'sent' do nothing returning id`,
      [tx.organizationId, draft.id, draft.clientId, draft.fromOn, draft.untilOn],
    );
    return rows.length;
  },

  /** What was made of a report, when it was approved. */
  edition(tx: OrganizationTransaction, reportId: string): Promise<ReportEditionRow | null> {
    return tx.of(ReportEditionRow).findOneBy({ organizationId: tx.organizationId, reportId });
  },

  /** The data versions with which some reports were approved; a draft's former approval counts no more. */
  async approvedVersions(tx: OrganizationTransaction, reportIds: readonly string[]): Promise<Map<string, string>> {
    const rows = await tx.query<{ id: string; version: string }>(
      `select water_report.id, report_edition.data_version as version from report_edition
         join water_report on water_report.organization_id = report_edition.organization_id and water_report.id = report_edition.report_id
        where report_edition.organization_id = $1 and report_id = any($2::uuid[]) and water_report.state <> 'draft'`,
      [tx.organizationId, reportIds],
    );
    return new Map(rows.map(({ id, version }) => [id, version]));
  },

  /** Keeps what was made of a report in place of what was made before. */
  async keepEdition(tx: OrganizationTransaction, edition: Omit<ReportEditionRow, 'organizationId' | 'id' | 'madeAt'>): Promise<void> {
    await tx.of(ReportEditionRow).delete({ organizationId: tx.organizationId, reportId: edition.reportId });
    await tx.of(ReportEditionRow).insert({ ...edition, organizationId: tx.organizationId, id: randomUUID() });
  },
};
