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

  @Field(() => String)
  question: string;

  @Field(() => DateTimeScalar)
  askedAt: Date;

  @Field(() => String, { nullable: true })
  answer: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  answeredAt: Date | null;
}

export function showQuestion(row: ClientQuestionRow): ClientQuestion {
  const { organizationId: _, askedBy: __, answeredBy: ___, ...shown } = row;
  return Object.assign(new ClientQuestion(), shown);
}
