import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { newSecret } from '../secret-link.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { shareLinks, UNUSED } from './share-link.repository.js';
import { type ShareLink, showLink } from './share-link.type.js';

const DAY_MS = 86_400_000;
const MOST_DAYS = 400;

/** Makes a link to a report that was approved. Its secret is told once and only its hash is kept. */
@Injectable()
export class ShareReport {
  async run(tx: OrganizationTransaction, reportId: string, days: number): Promise<ShareLink> {
    if (!(Number.isInteger(days) && days >= 1 && days <= MOST_DAYS))
      throw platformProblems.valueRefused({ field: 'days', found: days, expected: `a whole number from 1 to ${MOST_DAYS}` });
    const report = await waterReports.one(tx, reportId);
    if (!report) throw platformProblems.notFound({ thing: 'report', id: reportId });
    if (report.state === 'draft') throw reportsProblems.notApproved({ reportId, report: await nameOfReport(tx, report) });
    const { link, hash } = newSecret(tx.organizationId);
    const row = await shareLinks.add(tx, { reportId, tokenHash: hash, expiresAt: new Date(Date.now() + days * DAY_MS) });
    return showLink(row, UNUSED, `/api/shared/${link}`);
  }
}
