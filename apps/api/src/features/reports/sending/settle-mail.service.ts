import { Inject, Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { reportsProblems } from '../reports.problems.js';
import type { ReportMailRow } from './mails/report-mail.entity.js';
import { reportMails } from './mails/report-mail.repository.js';
import { SEND_REPORT } from './send-report.job.js';

/** What a person found out about a mail. */
export type MailVerdict = 'arrived' | 'send again' | 'bounced';

/** From which states each verdict may be said. */
const FROM: Readonly<Record<MailVerdict, readonly ReportMailRow['state'][]>> = {
  arrived: ['unknown'],
  'send again': ['unknown', 'refused', 'bounced'],
  bounced: ['sent', 'unknown'],
};

/** A person says what became of a mail that nobody knows of, or that came back. */
@Injectable()
export class SettleMail {
  constructor(@Inject(Jobs) private readonly jobs: Jobs) {}

  async run(tx: OrganizationTransaction, id: string, verdict: MailVerdict): Promise<ReportMailRow> {
    const mail = await reportMails.one(tx, id);
    if (!mail) throw platformProblems.notFound({ thing: 'mail', id });
    if (!FROM[verdict].includes(mail.state)) throw reportsProblems.mailNotOpen({ mailId: id, state: mail.state });
    // Two people may say it at once: the second must not send again what the first has sent.
    const isSaid = await reportMails.settle(tx, id, valuesOf(verdict, mail), FROM[verdict]);
    if (!isSaid) throw reportsProblems.mailNotOpen({ mailId: id, state: (await reportMails.one(tx, id))?.state ?? mail.state });
    await this.jobs.ask(tx, SEND_REPORT, { reportId: mail.reportId });
    return (await reportMails.one(tx, id))!;
  }
}

function valuesOf(verdict: MailVerdict, { triedAt }: ReportMailRow): Partial<ReportMailRow> {
  if (verdict === 'arrived') return { state: 'sent', sentAt: triedAt };
  if (verdict === 'bounced') return { state: 'bounced', mayHaveArrived: false };
  return { state: 'queued', attempts: 0, nextTryAt: new Date() };
}
