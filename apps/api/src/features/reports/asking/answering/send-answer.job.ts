import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { organizations } from '../../../../platform/identity/organizations/organization.repository.js';
import { type JobRun, Jobs } from '../../../../platform/jobs/jobs.js';
import { reportBrands } from '../../brand/report-brand.repository.js';
import { HandOver } from '../../posting/hand-over.service.js';
import { mailSettings } from '../../posting/mail-settings.js';
import { type Delivery, MOST_TRIES, nextTry } from '../../posting/post.js';
import { clientQuestions } from '../client-question.repository.js';
import { answerMessage, type AnswerToMail } from './answer-message.js';

/** The kind of the background work. */
export const SEND_ANSWER = 'send answer';

/** Sends the answer to whoever asked, once: what was begun and not ended is unknown, and is not sent again by itself. */
@Injectable()
export class SendAnswerJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly handOver: HandOver,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(SEND_ANSWER, (run) => this.run(run));
  }

  private async run(run: JobRun): Promise<string> {
    const id = String(run.payload['questionId']);
    const mail = await run.within((tx) => claim(tx, id));
    if (!mail) return 'the answer does not wait to be sent';
    const { messageId, message } = answerMessage(mail, mailSettings());
    const delivery = await this.handOver.run(message, run.organizationId, messageId);
    return run.within((tx) => this.settle(tx, id, mail.attempts, delivery));
  }

  /** What is to be tried again is asked for in the same transaction that says so. */
  private async settle(tx: OrganizationTransaction, id: string, attempts: number, { kind, answer }: Delivery): Promise<string> {
    const isTriedAgain = kind === 'again' && attempts < MOST_TRIES;
    const state = kind === 'again' ? (isTriedAgain ? 'queued' : 'refused') : kind;
    if (!(await clientQuestions.settleMail(tx, id, { mailState: state, mailAnswer: answer })))
      return 'the answer was changed while it was sent: the new one has a mail of its own';
    if (isTriedAgain) await this.jobs.ask(tx, SEND_ANSWER, { questionId: id }, nextTry(attempts, new Date()));
    return `the answer is ${isTriedAgain ? 'to be sent again' : state}`;
  }
}

/** `sending` is on the disk before a word is said to the server; what a worker began and never ended is unknown. */
async function claim(tx: OrganizationTransaction, id: string): Promise<AnswerToMail | null> {
  const asked = await clientQuestions.one(tx, id);
  if (asked?.mailState === 'sending') await clientQuestions.change(tx, id, { mailState: 'unknown' });
  const row = await clientQuestions.claimMail(tx, id);
  if (!row || row.email === null || row.answer === null) return null;
  const { name } = await organizations.own(tx);
  const brand = await reportBrands.own(tx);
  return {
    question: row,
    to: row.email,
    answer: row.answer,
    attempts: row.mailAttempts,
    by: { name: brand?.name ?? name, contact: brand?.contact ?? null },
  };
}
