import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { ReportMailRow } from './report-mail.entity.js';
import { reportMails } from './report-mail.repository.js';

/** The mails of a report, by recipient. */
export const mailsOfReport = defineLoader<string, readonly ReportMailRow[]>(
  async (tx, ids) => grouped(await reportMails.ofReports(tx, ids), ({ reportId }) => reportId),
  [],
);
