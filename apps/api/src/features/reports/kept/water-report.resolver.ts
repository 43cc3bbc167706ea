import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { judgeOrder, judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { judgeWholeMonths } from './asked-period.js';
import { reportsProblems } from '../reports.problems.js';
import { mayBeOut } from '../sending/mails/report-mail.entity.js';
import { reportMails } from '../sending/mails/report-mail.repository.js';
import { nameOfReport } from './loaders/report-name.js';
import { WaterReportRow } from './water-report.entity.js';
import { WaterReportInput } from './water-report.input.js';
import { waterReports } from './water-report.repository.js';
import { WaterReport, showWaterReport } from './water-report.type.js';

const Kept = keptThingResolver({
  name: 'WaterReport',
  row: WaterReportRow,
  type: WaterReport,
  input: WaterReportInput,
  permission: Permission.WriteReports,
  show: showWaterReport,
  keep: (input) => ({
    clientId: input.clientId,
    propertyId: input.propertyId ?? null,
    fromOn: input.fromOn,
    untilOn: input.untilOn,
    note: input.note?.trim() || null,
  }),
  called: (input) => `${input.fromOn} to ${input.untilOn}`,
  judge: async (tx, input, id) => {
    judgeValues(input, { note: text });
    judgeOrder('untilOn', input.fromOn, input.untilOn, 'the first day');
    judgeWholeMonths(input);
    if (!(await clientOfId.of(tx).load(input.clientId))) throw platformProblems.notFound({ thing: 'client', id: input.clientId });
    await judgeProperty(tx, input);
    if (id !== null) await judgeUnsent(tx, id);
  },
  needs: async (tx, id) => {
    await judgeNotOut(tx, id);
    return null;
  },
});

async function judgeProperty(tx: OrganizationTransaction, { clientId, propertyId }: WaterReportInput): Promise<void> {
  if (!propertyId) return;
  const property = await propertyOfId.of(tx).load(propertyId);
  if (property?.clientId !== clientId) throw platformProblems.notFound({ thing: 'property of this client', id: propertyId });
}

/** What was sent is kept as it was sent. */
async function judgeUnsent(tx: OrganizationTransaction, id: string): Promise<void> {
  const report = await waterReports.one(tx, id);
  if (report && report.state !== 'draft')
    throw reportsProblems.notDraft({ reportId: id, report: await nameOfReport(tx, report), state: report.state });
}

/** What may have reached somebody does not vanish from their page: a new report of the same period corrects it. */
async function judgeNotOut(tx: OrganizationTransaction, id: string): Promise<void> {
  const report = await waterReports.one(tx, id);
  if (!report) return;
  const mails = await reportMails.ofReports(tx, [id]);
  if (report.state === 'sent' || mails.some(mayBeOut))
    throw reportsProblems.alreadyOut({ reportId: id, report: await nameOfReport(tx, report) });
}

/** Water reports: read, created, changed, retired. */
@Resolver(() => WaterReport)
export class WaterReportResolver extends Kept {
  /** all that are in use, or those of some ids */
  @Allow(Permission.ReadReports)
  @Query(() => [WaterReport], { name: 'waterReports' })
  async all(
    @Tx() tx: OrganizationTransaction,
    @Args('ids', { type: () => [ID], nullable: true }) ids: string[] | null | undefined,
  ): Promise<WaterReport[]> {
    return (ids ? await waterReports.some(tx, ids) : await waterReports.inUse(tx)).map(showWaterReport);
  }
}
