import { Inject, Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Jobs } from '../../../../platform/jobs/jobs.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import type { ClientQuestionRow } from '../client-question.entity.js';
import { clientQuestions } from '../client-question.repository.js';
import { words } from '../words-of-question.js';
import { SEND_ANSWER } from './send-answer.job.js';

/** The office answers: shown where it was asked, and sent to whoever asked where an address is known. */
@Injectable()
export class AnswerQuestion {
  constructor(@Inject(Jobs) private readonly jobs: Jobs) {}

  async run(tx: OrganizationTransaction, id: string, written: string): Promise<ClientQuestionRow> {
    const asked = await clientQuestions.one(tx, id);
    if (!asked) throw platformProblems.notFound({ thing: 'question', id });
    const answer = words('answer', written);
    // Said twice, it is one answer and one mail.
    if (asked.answer === answer) return asked;
    await clientQuestions.change(tx, id, {
      answer,
      answeredBy: tx.actor.personId,
      answeredAt: new Date(),
      dismissedAt: null,
      dismissedBy: null,
      mailState: asked.email === null ? null : 'queued',
      mailAnswer: null,
      mailAttempts: 0,
    });
    if (asked.email !== null) await this.jobs.ask(tx, SEND_ANSWER, { questionId: id });
    return (await clientQuestions.one(tx, id))!;
  }
}
