import { randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../platform/problems/constraint-problems.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { hashOfName, newSecret, secretOf } from '../secret-link.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { shareLinks, UNUSED } from './share-link.repository.js';
import { type ShareLink, showLink } from './share-link.type.js';

const DAY_MS = 86_400_000;
const MOST_DAYS = 400;

interface Wish {
  readonly reportId: string;
  readonly days: number;
  /** the name that the device gave it: sent again, the same link is told */
  readonly name: string | null;
}

/** Makes a link to a report that was approved. Its secret is told when it is asked for under its name, and only its hash is kept. */
@Injectable()
export class ShareReport {
  async run(tx: OrganizationTransaction, { reportId, days, name: given }: Wish): Promise<ShareLink> {
    judge(days, given);
    const wish = { reportId, days, name: given?.toLowerCase() ?? null };
    const made = await madeBefore(tx, wish);
    if (made) return made;
    await requireApproved(tx, reportId);
    try {
      return await tx.attempt(async () => make(tx, wish));
    } catch (problem) {
      // Another request with the same name was quicker.
      const quicker = brokenConstraint(problem)?.name === 'share_link_device_record_once' ? await madeBefore(tx, wish) : null;
      if (quicker) return quicker;
      throw problem;
    }
  }
}

function judge(days: number, name: string | null): void {
  if (!(Number.isInteger(days) && days >= 1 && days <= MOST_DAYS))
    throw platformProblems.valueRefused({ field: 'days', found: days, expected: `a whole number from 1 to ${MOST_DAYS}` });
  if (name && !isUuid(name))
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: name, expected: 'a UUID made by the device' });
}

async function requireApproved(tx: OrganizationTransaction, reportId: string): Promise<void> {
  const report = await waterReports.one(tx, reportId);
  if (!report) throw platformProblems.notFound({ thing: 'report', id: reportId });
  if (report.state === 'draft') throw reportsProblems.notApproved({ reportId, report: await nameOfReport(tx, report) });
}

const pathOf = (link: string): string => `/api/shared/${link}`;

async function make(tx: OrganizationTransaction, { reportId, days, name }: Wish): Promise<ShareLink> {
  const expiresAt = new Date(Date.now() + days * DAY_MS);
  const salt = randomBytes(32);
  const { link, hash } = name ? secretOf(tx.organizationId, { salt, name }) : newSecret(tx.organizationId);
  const row = await shareLinks.add(tx, { reportId, tokenHash: hash, expiresAt, ...(name && { nameHash: hashOfName(name), salt, days }) });
  return showLink(row, UNUSED, pathOf(link));
}

/** The link that the same request made; null where it comes for the first time. */
async function madeBefore(tx: OrganizationTransaction, { reportId, days, name }: Wish): Promise<ShareLink | null> {
  const row = name ? await shareLinks.named(tx, hashOfName(name)) : null;
  if (!row || !name) return null;
  if (row.reportId !== reportId.toLowerCase() || row.days !== days || row.salt === null)
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: name, expected: 'a UUID of its own for each record' });
  const use = await shareLinks.use(tx, [row.id]);
  const { link } = secretOf(tx.organizationId, { salt: row.salt, name });
  return showLink(row, use.get(row.id) ?? UNUSED, row.revokedAt ? null : pathOf(link));
}
