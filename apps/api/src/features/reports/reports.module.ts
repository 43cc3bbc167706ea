import { Module } from '@nestjs/common';
import { FieldworkModule } from '../fieldwork/fieldwork.module.js';
import { ApproveRecommended } from './asking/recommended/approve-recommended.service.js';
import { AskByLink } from './asking/ask-by-link.service.js';
import { AnswerQuestion } from './asking/answering/answer-question.service.js';
import { SendAnswerJob } from './asking/answering/send-answer.job.js';
import { AskOffice } from './asking/ask-office.service.js';
import { ClientQuestionResolver } from './asking/client-question.resolver.js';
import { RecommendationResolver } from './asking/recommended/recommendation.resolver.js';
import { ReportBrandResolver } from './brand/report-brand.resolver.js';
import { GatherReport } from './gather/gather-report.service.js';
import { GivenPhotos } from './gather/given-photos.service.js';
import { OpenEdition } from './kept/open-edition.service.js';
import { ReportContentResolver } from './kept/report-content.field-resolver.js';
import { ReportController } from './kept/files/report.controller.js';
import { WaterReportResolver } from './kept/water-report.resolver.js';
import { OwnersMonthResolver } from './owner/owners-month.resolver.js';
import { PrintReport } from './printing/print-report.service.js';
import { ApproveReport } from './sending/approve-report.service.js';
import { DraftReportsJob } from './sending/draft-reports.job.js';
import { HandOver } from './posting/hand-over.service.js';
import { ReportMailingResolver } from './posting/report-mailing.resolver.js';
import { ReopenReport } from './sending/reopen-report.service.js';
import { SendReportJob } from './sending/send-report.job.js';
import { SendReports } from './sending/send-reports.service.js';
import { SendingResolver } from './sending/sending.resolver.js';
import { SettleMail } from './sending/settle-mail.service.js';
import { SharedController } from './sharing/shared.controller.js';
import { ShareReport } from './sharing/share-report.service.js';
import { SharingResolver } from './sharing/sharing.resolver.js';
import { StopReportsController } from './sharing/stop-reports.controller.js';

const kept = [WaterReportResolver, ReportContentResolver, OpenEdition, GatherReport, GivenPhotos, PrintReport, ReportBrandResolver];
const sending = [
  SendingResolver,
  ApproveReport,
  ReopenReport,
  SendReports,
  SettleMail,
  HandOver,
  ReportMailingResolver,
  SendReportJob,
  DraftReportsJob,
];
const clients = [
  SharingResolver,
  ShareReport,
  ClientQuestionResolver,
  AskOffice,
  AskByLink,
  AnswerQuestion,
  SendAnswerJob,
  RecommendationResolver,
  ApproveRecommended,
];

/** Water reports: written once from what is on record, printed, approved, sent, and kept as they were sent. */
@Module({
  imports: [FieldworkModule],
  controllers: [ReportController, SharedController, StopReportsController],
  providers: [...kept, ...sending, ...clients, OwnersMonthResolver],
})
export class ReportsModule {}
