import { Inject, Injectable } from '@nestjs/common';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { propertiesOfClient } from '../../portfolio/properties/properties-of-client.loader.js';
import { WaterReportRow } from '../kept/water-report.entity.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { reportMails } from './mails/report-mail.repository.js';
import { SEND_REPORT } from './send-report.job.js';

/** Mails of a day leave when people begin to read. */
const HOUR = 7;

/** Sends approved reports: now, or on a day in the morning where the client's first property lies. */
@Injectable()
export class SendReports {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly records: KeptRecords,
  ) {}

  async run(tx: OrganizationTransaction, ids: readonly string[], onDay: string | null): Promise<WaterReportRow[]> {
    const sent: WaterReportRow[] = [];
    for (const id of new Set(ids)) sent.push(await this.one(tx, id, onDay));
    return sent;
  }

  private async one(tx: OrganizationTransaction, id: string, onDay: string | null): Promise<WaterReportRow> {
    const report = await waterReports.one(tx, id);
    if (!report) throw platformProblems.notFound({ thing: 'report', id });
    if (report.state === 'draft') throw reportsProblems.notApproved({ reportId: id });
    const at = onDay === null ? new Date() : await morningOf(tx, report.clientId, onDay);
    const recipients = await recipientsOf(tx, report.clientId);
    await reportMails.queue(tx, id, recipients, at);
    const { open } = await reportMails.counts(tx, id);
    // Without an address it is there for the client to see on their own page, and that is all.
    if (open === 0) return report.state === 'sent' ? report : this.change(tx, report, { state: 'sent', sentAt: new Date() });
    await this.jobs.ask(tx, SEND_REPORT, { reportId: id }, at);
    return this.change(tx, report, { sendAt: at });
  }

  private async change(tx: OrganizationTransaction, report: WaterReportRow, values: Partial<WaterReportRow>): Promise<WaterReportRow> {
    const changed = await this.records.change<WaterReportRow>(tx, WaterReportRow, report.id, report.version, values);
    // It was read in this transaction: nobody can have changed it but a writer who has just committed.
    if (changed instanceof VersionConflict) throw reportsProblems.changedMeanwhile({ reportId: report.id });
    return changed;
  }
}

async function morningOf(tx: OrganizationTransaction, clientId: string, day: string): Promise<Date> {
  const [first] = await propertiesOfClient.of(tx).load(clientId);
  const at = Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: first?.timeZone ?? 'UTC', plainTime: { hour: HOUR } });
  return new Date(at.epochMilliseconds);
}

async function recipientsOf(tx: OrganizationTransaction, clientId: string): Promise<string[]> {
  const client = await clientOfId.of(tx).load(clientId);
  const emails = [...new Set((client?.emails ?? []).map((email) => email.trim()).filter(Boolean))];
  const stopped = await reportMails.stopped(tx, emails);
  return emails.filter((email) => !stopped.has(email.toLowerCase()));
}
