import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobEnd, type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { asProblem } from '../../../platform/problems/answer.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { ApproveReport } from './approve-report.service.js';

/** The kinds of the background work. */
export const DRAFT_REPORTS = 'draft reports';
export const APPROVE_REPORTS = 'approve reports';

/** Drafts for all clients of a period, and approvals of many: one transaction each, with progress. Doing it again changes nothing. */
@Injectable()
export class DraftReportsJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly approve: ApproveReport,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(DRAFT_REPORTS, (run) => this.draftAll(run));
    this.jobs.handle(APPROVE_REPORTS, (run) => this.approveAll(run));
  }

  private async draftAll(run: JobRun): Promise<JobEnd> {
    const { fromOn, untilOn } = run.payload as { fromOn: string; untilOn: string };
    const clients = await run.within(clientsWithProperties);
    let made = 0;
    for (const [at, clientId] of clients.entries()) {
      made += await run.within((tx) => waterReports.draft(tx, { id: randomUUID(), clientId, fromOn, untilOn }));
      await run.progress(at + 1, clients.length);
    }
    const there = clients.length - made;
    return { code: 'drafted', details: { made, there }, says: `${made} drafts made, ${there} clients had one` };
  }

  private async approveAll(run: JobRun): Promise<JobEnd> {
    const { reportIds, dataVersions } = run.payload as { reportIds: readonly string[]; dataVersions?: readonly string[] | null };
    const versions: string[] = [];
    const refused: Refused[] = [];
    for (const [at, id] of reportIds.entries()) {
      await run
        .within(async (tx) => {
          const version = await this.approveOne(tx, id, dataVersions?.[at] ?? null);
          if (version !== null) versions.push(version);
        })
        // One report that cannot be made must not keep the others back; it stays a draft and is named.
        .catch(async (thrown: Error) => {
          const { code, message } = asProblem(thrown);
          refused.push({ client: await run.within((tx) => clientNameOf(tx, id)), code, message });
        });
      await run.progress(at + 1, reportIds.length);
    }
    return endOfApproval(reportIds.length, versions, refused);
  }

  /** Gives the data version of what was approved; null where it is no draft any more. */
  private async approveOne(tx: OrganizationTransaction, id: string, seen: string | null): Promise<string | null> {
    const report = await waterReports.one(tx, id);
    if (report?.state !== 'draft') return null;
    const approved = await this.approve.run(tx, id, report.version, seen);
    if (approved instanceof VersionConflict)
      throw reportsProblems.changedMeanwhile({ reportId: id, report: await nameOfReport(tx, report) });
    return (await waterReports.approvedVersions(tx, [id])).get(id) ?? '';
  }
}

/** A draft that could not be approved, by its client, with the code of the problem. */
interface Refused {
  readonly client: string;
  readonly code: string;
  readonly message: string;
}

function endOfApproval(total: number, versions: readonly string[], refused: readonly Refused[]): JobEnd {
  const said = `${versions.length} of ${total} approved${versions.length ? `, of data versions ${versions.join(', ')}` : ''}`;
  const names = refused.length ? [`not approved: ${refused.map(({ client }) => client).join(', ')}`] : [];
  const skipped = total - versions.length - refused.length;
  return {
    code: 'approved',
    details: { approved: versions.length, total, skipped, refused: refused.map(({ client, code }) => ({ client, code })) },
    says: [said, ...names, ...refused.map(({ message }) => message)].join('; '),
  };
}

/** Whose report it is: what could not be approved is named by its client. */
async function clientNameOf(tx: OrganizationTransaction, reportId: string): Promise<string> {
  const report = await waterReports.one(tx, reportId);
  return (report && (await clientOfId.of(tx).load(report.clientId))?.name) ?? reportId;
}

async function clientsWithProperties(tx: OrganizationTransaction): Promise<string[]> {
  const rows = await tx.query<{ id: string }>(
    'select id from client where organization_id = $1 and retired_at is null and exists (select from property where property.organization_id = client.organization_id and property.client_id = client.id and property.retired_at is null) order by name',
    [tx.organizationId],
  );
  return rows.map(({ id }) => id);
}
