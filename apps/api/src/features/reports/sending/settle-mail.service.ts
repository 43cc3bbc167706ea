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
    if (verdict === 'arrived') await reportMails.settle(tx, id, { state: 'sent', sentAt: mail.triedAt });
    if (verdict === 'bounced') await reportMails.settle(tx, id, { state: 'bounced' });
    if (verdict === 'send again') await reportMails.settle(tx, id, { state: 'queued', attempts: 0, nextTryAt: new Date() });
    await this.jobs.ask(tx, SEND_REPORT, { reportId: mail.reportId });
    return (await reportMails.one(tx, id))!;
  }
}
