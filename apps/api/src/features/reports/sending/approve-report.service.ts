import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { OpenEdition } from '../kept/open-edition.service.js';
import { WaterReportRow } from '../kept/water-report.entity.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';

/** Approves a draft: what it says from then on is what was seen, whatever is recorded later. */
@Injectable()
export class ApproveReport {
  constructor(
    private readonly records: KeptRecords,
    private readonly opened: OpenEdition,
  ) {}

  async run(tx: OrganizationTransaction, id: string, version: number, seen: string | null): Promise<WaterReportRow | VersionConflict> {
    const report = await waterReports.one(tx, id);
    if (!report) throw platformProblems.notFound({ thing: 'report', id });
    if (report.state !== 'draft')
      throw reportsProblems.notDraft({ reportId: id, report: await nameOfReport(tx, report), state: report.state });
    const approved = await this.records.change(tx, WaterReportRow, id, version, {
      state: 'approved',
      approvedAt: new Date(),
      approvedBy: tx.actor.personId,
    });
    if (!(approved instanceof VersionConflict)) await this.opened.keep(tx, approved, seen);
    return approved;
  }
}
