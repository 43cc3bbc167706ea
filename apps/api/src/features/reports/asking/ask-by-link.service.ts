import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { WaterReportRow } from '../kept/water-report.entity.js';
import { reportsProblems } from '../reports.problems.js';
import { clientQuestions } from './client-question.repository.js';
import { words } from './words-of-question.js';

/** Whoever has a link may have passed it on: the office's desk is not to be flooded through it. */
const MOST_A_DAY = 20;

/** A question by whoever has the link of a report: it is that client's, about that report, and nobody's by name. */
@Injectable()
export class AskByLink {
  async run(tx: OrganizationTransaction, { id: reportId, clientId, propertyId }: WaterReportRow, question: string): Promise<void> {
    if ((await clientQuestions.ofReportToday(tx, reportId)) >= MOST_A_DAY) throw reportsProblems.tooManyQuestions({ most: MOST_A_DAY });
    await clientQuestions.add(tx, { clientId, propertyId, reportId, question: words('question', question) });
  }
}
