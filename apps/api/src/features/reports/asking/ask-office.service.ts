import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { waterReports } from '../kept/water-report.repository.js';
import type { ClientQuestionRow } from './client-question.entity.js';
import { clientQuestions } from './client-question.repository.js';
import { words } from './words-of-question.js';

/** A client asks the office: about their water, one of their properties, or a report that was sent to them. */
@Injectable()
export class AskOffice {
  async run(
    tx: OrganizationTransaction,
    { question, propertyId, reportId }: Pick<ClientQuestionRow, 'question' | 'propertyId' | 'reportId'>,
  ): Promise<ClientQuestionRow> {
    const { clientId } = tx.actor;
    if (clientId === null) throw platformProblems.notAllowed({ permission: 'ask the office: for clients' });
    const property = propertyId && (await propertyOfId.of(tx).load(propertyId));
    if (propertyId && (!property || property.clientId !== clientId)) throw platformProblems.notFound({ thing: 'property', id: propertyId });
    if (reportId && !(await waterReports.one(tx, reportId))) throw platformProblems.notFound({ thing: 'report', id: reportId });
    const asker = await clientQuestions.askerOf(tx, tx.actor.personId);
    return clientQuestions.add(tx, { clientId, propertyId, reportId, shareLinkId: null, ...asker, question: words('question', question) });
  }
}
