import { Field, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ClientQuestionRow } from './client-question.entity.js';

/** What a client asks the office, and the answer. */
@ObjectType()
export class ClientQuestion {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  clientId: string;

  @Field(() => ID, { nullable: true })
  propertyId: string | null;

  @Field(() => ID, { nullable: true })
  reportId: string | null;

  /** whether it came by a share link: nobody signed in to ask it */
  @Field(() => Boolean)
  byLink: boolean;

  @Field(() => String)
  question: string;

  @Field(() => DateTimeScalar)
  askedAt: Date;

  @Field(() => String, { nullable: true })
  answer: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  answeredAt: Date | null;

  /** put away by the office without an answer */
  @Field(() => DateTimeScalar, { nullable: true })
  dismissedAt: Date | null;

  /** where the answer goes by mail; null where whoever asked left no address */
  @Field(() => String, { nullable: true })
  email: string | null;

  /** of the mail with the answer; null where none went */
  @Field(() => String, { nullable: true })
  mailState: string | null;
}

export function showQuestion(row: ClientQuestionRow): ClientQuestion {
  const { id, clientId, propertyId, reportId, question, askedAt, answer, answeredAt, dismissedAt, email } = row;
  // Where no mail server is set it lies in the outbox folder, and nobody has it.
  const mailState = row.mailState === 'sent' && row.mailAnswer?.startsWith('in-outbox: ') ? 'written' : row.mailState;
  const byLink = row.shareLinkId !== null;
  const shown = { id, clientId, propertyId, reportId, byLink, question, askedAt, answer, answeredAt, dismissedAt, email, mailState };
  return Object.assign(new ClientQuestion(), shown);
}
