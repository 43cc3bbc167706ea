import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, type VersionConflict } from '../../../platform/records/kept-records.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { WaterReportRow } from '../kept/water-report.entity.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { mayBeOut } from './mails/report-mail.entity.js';
import { reportMails } from './mails/report-mail.repository.js';

/** Takes an approval back, as long as nothing may have reached anybody. */
@Injectable()
export class ReopenReport {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, id: string, version: number): Promise<WaterReportRow | VersionConflict> {
    const report = await waterReports.one(tx, id);
    if (!report) throw platformProblems.notFound({ thing: 'report', id });
    await reportMails.dropQueued(tx, id);
    const left = await reportMails.ofReports(tx, [id]);
    if (report.state === 'sent' || left.some(mayBeOut))
      throw reportsProblems.alreadyOut({ reportId: id, report: await nameOfReport(tx, report) });
    return this.records.change(tx, WaterReportRow, id, version, { state: 'draft', approvedAt: null, approvedBy: null, sendAt: null });
  }
}
