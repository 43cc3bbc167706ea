import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobEnd, type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { KeptRecords } from '../../../platform/records/kept-records.js';
import { OpenEdition } from '../kept/open-edition.service.js';
import { newSecret } from '../secret-link.js';
import { WaterReportRow } from '../kept/water-report.entity.js';
import { waterReports } from '../kept/water-report.repository.js';
import { HandOver } from '../posting/hand-over.service.js';
import { mailSettings } from '../posting/mail-settings.js';
import { type Delivery, MOST_TRIES, nextTry } from '../posting/post.js';
import { reportMails } from './mails/report-mail.repository.js';
import { reportMessage } from '../posting/report-message.js';

/** The kind of the background work. */
export const SEND_REPORT = 'send report';

interface Ready {
  readonly model: ReportModel;
  readonly pdf: Buffer;
}

/** Sends an approved report to its recipients, each once: what was begun and not ended is unknown, and a person decides. */
@Injectable()
export class SendReportJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly records: KeptRecords,
    private readonly opened: OpenEdition,
    private readonly handOver: HandOver,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(SEND_REPORT, (run) => this.run(run));
  }

  private async run(run: JobRun): Promise<JobEnd> {
    const reportId = String(run.payload['reportId']);
    const ready = await run.within(async (tx) => {
      await reportMails.loseTouch(tx, reportId);
      return this.ready(tx, reportId);
    });
    if (!ready) return { code: 'not-approved', details: {}, says: 'the report is not approved any more: nothing was sent' };
    const due = await run.within((tx) => reportMails.due(tx, reportId));
    for (const [at, mailId] of due.entries()) {
      await this.send(run, ready, { reportId, mailId });
      await run.progress(at + 1, due.length);
    }
    return run.within((tx) => this.finish(tx, reportId, run.payload['batch']));
  }

  private async ready(tx: OrganizationTransaction, reportId: string): Promise<Ready | null> {
    const report = await waterReports.one(tx, reportId);
    if (!report || report.state === 'draft') return null;
    const { model, pdf } = await this.opened.run(tx, reportId);
    return pdf && { model, pdf };
  }

  /** `sending` is on the disk before a word is said to the server. */
  private async send(run: JobRun, { model, pdf }: Ready, { reportId, mailId }: { reportId: string; mailId: string }): Promise<void> {
    const { publicUrl, from } = mailSettings();
    const secret = newSecret(run.organizationId);
    const mail = await run.within((tx) => reportMails.claim(tx, reportId, mailId, secret.hash));
    if (!mail) return;
    const stopUrl = publicUrl && `${publicUrl}/api/stop-reports/${secret.link}`;
    const message = reportMessage(model, pdf, { mailId, to: mail.recipient, from, stopUrl });
    const delivery = await this.handOver.run(message, run.organizationId, mailId);
    await run.within((tx) => reportMails.settle(tx, mailId, outcomeOf(delivery, mail.attempts, new Date())));
  }

  /** What is to be tried again is asked for in the same transaction that says so. */
  private async finish(tx: OrganizationTransaction, reportId: string, batch: unknown): Promise<JobEnd> {
    const { total, sent, written, open, nextTryAt } = await reportMails.counts(tx, reportId);
    if (nextTryAt) await this.jobs.ask(tx, SEND_REPORT, { reportId, ...triedAgain(batch) }, nextTryAt);
    const report = await waterReports.one(tx, reportId);
    if (report?.state === 'approved' && open === 0 && sent + written > 0)
      await this.records.change(tx, WaterReportRow, report.id, report.version, { state: 'sent', sentAt: new Date() });
    const parts = [
      `${sent} of ${total} mails sent`,
      written && `${written} written into the outbox folder`,
      open && `${open} to be tried again`,
    ];
    return { code: 'mailed', details: { sent, written, total, open }, says: parts.filter(Boolean).join(', ') };
  }
}

function outcomeOf({ kind, answer }: Delivery, attempts: number, now: Date) {
  if (kind === 'sent') return { state: 'sent' as const, answer, sentAt: now };
  if (kind === 'again' && attempts < MOST_TRIES) return { state: 'queued' as const, answer, nextTryAt: nextTry(attempts, now) };
  if (kind === 'again') return { state: 'refused' as const, answer: `given-up: ${attempts}, ${answer}` };
  return { state: kind, answer };
}

const AGAIN = 'again ';

/** What one press sent and was not taken is told of together too: many that wait must not push what was pressed out of sight. */
function triedAgain(batch: unknown): { batch?: string } {
  if (typeof batch !== 'string') return {};
  return { batch: batch.startsWith(AGAIN) ? batch : `${AGAIN}${batch}` };
}
