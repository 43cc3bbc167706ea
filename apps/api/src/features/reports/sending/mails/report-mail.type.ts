import { Field, ID, Int, ObjectType, registerEnumType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { ReportMailRow } from './report-mail.entity.js';

/** What a person found out about a mail. */
export enum MailFound {
  arrived = 'arrived',
  sendAgain = 'send again',
  bounced = 'bounced',
}
registerEnumType(MailFound, { name: 'MailFound' });

/** One report to one recipient, and what became of it. */
@ObjectType()
export class ReportMail {
  @Field(() => ID)
  id: string;

  @Field(() => String)
  recipient: string;

  /** queued, sending, sent, refused, unknown, bounced */
  @Field(() => String)
  state: string;

  @Field(() => Int)
  attempts: number;

  /** what the server said, or why nothing is known */
  @Field(() => String, { nullable: true })
  answer: string | null;

  @Field(() => DateTimeScalar)
  nextTryAt: Date;

  @Field(() => DateTimeScalar, { nullable: true })
  sentAt: Date | null;
}

export function showMail(row: ReportMailRow): ReportMail {
  const { id, recipient, state, attempts, answer, nextTryAt, sentAt } = row;
  return Object.assign(new ReportMail(), { id, recipient, state, attempts, answer, nextTryAt, sentAt });
}
