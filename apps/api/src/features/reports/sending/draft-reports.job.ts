import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { waterReports } from '../kept/water-report.repository.js';
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

  private async draftAll(run: JobRun): Promise<string> {
    const { fromOn, untilOn } = run.payload as { fromOn: string; untilOn: string };
    const clients = await run.within(clientsWithProperties);
    let made = 0;
    for (const [at, clientId] of clients.entries()) {
      made += await run.within((tx) => waterReports.draft(tx, { id: randomUUID(), clientId, fromOn, untilOn }));
      await run.progress(at + 1, clients.length);
    }
    return `${made} drafts made, ${clients.length - made} clients had one`;
  }

  private async approveAll(run: JobRun): Promise<string> {
    const ids = run.payload['reportIds'] as readonly string[];
    const failed: string[] = [];
    const reasons: string[] = [];
    const versions: string[] = [];
    for (const [at, id] of ids.entries()) {
      await run
        .within(async (tx) => {
          const report = await waterReports.one(tx, id);
          if (report?.state !== 'draft') return;
          const approved = await this.approve.run(tx, id, report.version, null);
          if (approved instanceof VersionConflict) failed.push(await clientNameOf(tx, id));
          else versions.push((await waterReports.approvedVersions(tx, [id])).get(id) ?? '');
        })
        // One report that cannot be made must not keep the others back; it stays a draft and is named.
        .catch(async (problem: Error) => {
          failed.push(await run.within((tx) => clientNameOf(tx, id)));
          reasons.push(problem.message);
        });
      await run.progress(at + 1, ids.length);
    }
    const said = `${versions.length} of ${ids.length} approved${versions.length ? `, of data versions ${versions.join(', ')}` : ''}`;
    return [said, ...(failed.length ? [`not approved: ${failed.join(', ')}`] : []), ...reasons].join('; ');
  }
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
