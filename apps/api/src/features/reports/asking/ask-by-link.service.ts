import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { OpenReport } from '../kept/open-edition.service.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { reportsProblems } from '../reports.problems.js';
import { clientQuestions } from './client-question.repository.js';
import { words } from './words-of-question.js';

/** Whoever has a link may have passed it on: the office's desk is not to be flooded through it. */
const MOST_A_DAY = 20;

/** What was written into the form of a link. */
export interface AskedByLink {
  readonly shareLinkId: string;
  readonly question: string;
  /** where the answer goes; empty where it is to be read on the link alone */
  readonly email: string;
}

/** A question by whoever has the link of a report: it is that client's, about that report, and nobody's by name. */
@Injectable()
export class AskByLink {
  async run(tx: OrganizationTransaction, { report, model }: OpenReport, { shareLinkId, question, email }: AskedByLink): Promise<void> {
    const { id: reportId, clientId, propertyId } = report;
    if ((await clientQuestions.ofReportToday(tx, reportId)) >= MOST_A_DAY) throw reportsProblems.tooManyQuestions({ most: MOST_A_DAY });
    const { language } = model;
    const asker = { shareLinkId, email: addressOf(email), language };
    await clientQuestions.add(tx, { clientId, propertyId, reportId, ...asker, question: words('question', question) });
  }
}

const MOST_OF_ADDRESS = 254;
const ADDRESS = /^[^\s<>,;:"()@]+@[^\s<>,;:"()@]+\.[^\s<>,;:"()@.]+$/;

function addressOf(written: string): string | null {
  const email = written.trim();
  if (!email) return null;
  if (email.length > MOST_OF_ADDRESS || !ADDRESS.test(email))
    throw platformProblems.valueRefused({
      field: 'email',
      found: email.slice(0, 40),
      expected: 'an address like name@place.org, or nothing',
    });
  return email;
}
