import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { propertiesOfClient } from '../../portfolio/properties/properties-of-client.loader.js';
import { nameOfReport } from '../kept/loaders/report-name.js';
import { WaterReportRow } from '../kept/water-report.entity.js';
import { waterReports } from '../kept/water-report.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { addressesOf } from './mails/addresses.service.js';
import { NO_ADDRESS_ANY_MORE, reportMails, WANTS_NO_MORE } from './mails/report-mail.repository.js';
import { SEND_REPORT } from './send-report.job.js';

/** Mails of a day leave when people begin to read. */
const HOUR = 7;

interface Wish {
  readonly onDay: string | null;
  readonly batch: string;
}

/** Sends approved reports: now, or on a day in the morning where the client's first property lies. */
@Injectable()
export class SendReports {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly records: KeptRecords,
  ) {}

  async run(tx: OrganizationTransaction, ids: readonly string[], onDay: string | null): Promise<WaterReportRow[]> {
    const sent: WaterReportRow[] = [];
    const batch = randomUUID();
    for (const id of new Set(ids)) sent.push(await this.one(tx, id, { onDay, batch }));
    return sent;
  }

  /** What is sent with one press is one batch: how far it is is told of all together. */
  private async one(tx: OrganizationTransaction, id: string, { onDay, batch }: Wish): Promise<WaterReportRow> {
    const report = await waterReports.one(tx, id);
    if (!report) throw platformProblems.notFound({ thing: 'report', id });
    if (report.state === 'draft') throw reportsProblems.notApproved({ reportId: id, report: await nameOfReport(tx, report) });
    const at = onDay === null ? new Date() : await morningOf(tx, report.clientId, onDay);
    const { mailed } = await addressesOf(tx, report.clientId);
    await reportMails.queue(tx, id, mailed, at);
    const { open } = await reportMails.counts(tx, id);
    if (open === 0) return this.unmailed(tx, report);
    await this.jobs.ask(tx, SEND_REPORT, { reportId: id, batch }, onDay === null ? null : at);
    return this.change(tx, report, { sendAt: at });
  }

  /** Without an address that is mailed it is there for the client to see on their own page, and that is all. */
  private async unmailed(tx: OrganizationTransaction, report: WaterReportRow): Promise<WaterReportRow> {
    if (report.state === 'sent') return report;
    const mails = (await reportMails.ofReports(tx, [report.id])).filter(
      ({ answer }) => answer !== WANTS_NO_MORE && answer !== NO_ADDRESS_ANY_MORE,
    );
    if (mails.length > 0 && mails.every(({ state }) => state !== 'sent'))
      throw reportsProblems.nobodyMailed({
        reportId: report.id,
        report: await nameOfReport(tx, report),
        mails: mails.map(({ recipient, state }) => `${recipient} (${state})`).join(', '),
      });
    return this.change(tx, report, { state: 'sent', sentAt: new Date() });
  }

  private async change(tx: OrganizationTransaction, report: WaterReportRow, values: Partial<WaterReportRow>): Promise<WaterReportRow> {
    const changed = await this.records.change<WaterReportRow>(tx, WaterReportRow, report.id, report.version, values);
    // It was read in this transaction: nobody can have changed it but a writer who has just committed.
    if (changed instanceof VersionConflict)
      throw reportsProblems.changedMeanwhile({ reportId: report.id, report: await nameOfReport(tx, report) });
    return changed;
  }
}

async function morningOf(tx: OrganizationTransaction, clientId: string, day: string): Promise<Date> {
  const [first] = await propertiesOfClient.of(tx).load(clientId);
  const timeZone = first?.timeZone ?? 'UTC';
  const today = Temporal.Now.plainDateISO(timeZone);
  if (Temporal.PlainDate.compare(day, today) < 0)
    throw platformProblems.valueRefused({ field: 'onDay', found: day, expected: `today (${today.toString()}) or a later day` });
  const at = Temporal.PlainDate.from(day).toZonedDateTime({ timeZone, plainTime: { hour: HOUR } });
  return new Date(at.epochMilliseconds);
}
