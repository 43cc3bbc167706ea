import { Field, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar, JsonScalar } from '../../../platform/graphql/scalars.js';
import { wordThatStands } from './word-that-stands.js';
import type { OperationRow } from './operation.entity.js';

/** Why an operation was not, or not simply, applied. */
@ObjectType()
export class OperationProblem {
  @Field(() => String)
  code: string;

  @Field(() => String)
  message: string;

  @Field(() => JsonScalar)
  details: unknown;
}

/** What became of an operation: applied, parallel, conflict or refused. */
@ObjectType()
export class OperationVerdict {
  @Field(() => ID)
  key: string;

  @Field(() => String)
  verdict: string;

  @Field(() => OperationProblem, { nullable: true })
  problem: OperationProblem | null;

  /** what stood there before, or stands there instead */
  @Field(() => JsonScalar, { nullable: true })
  other: unknown;
}

/** An operation that somebody in the office should look at. */
@ObjectType()
export class OpenOperation extends OperationVerdict {
  @Field(() => String)
  kind: string;

  /** what the phone said, as it came */
  @Field(() => String)
  body: string;

  /** which of the two words stands, 'sent' or 'other'; null where there is nothing to choose */
  @Field(() => String, { nullable: true })
  stands: string | null;

  @Field(() => DateTimeScalar)
  savedAt: Date;

  @Field(() => DateTimeScalar)
  receivedAt: Date;

  personId: string | null;

  deviceId: string;
}

export const showVerdict = ({ id, verdict, answer }: Pick<OperationRow, 'id' | 'verdict' | 'answer'>): OperationVerdict =>
  Object.assign(new OperationVerdict(), { key: id, verdict, problem: answer.problem ?? null, other: answer.other ?? null });

export const showOpen = (row: OperationRow): OpenOperation =>
  Object.assign(new OpenOperation(), showVerdict(row), {
    kind: row.kind,
    body: row.body,
    stands: wordThatStands(row),
    savedAt: row.savedAt,
    receivedAt: row.receivedAt,
    personId: row.personId,
    deviceId: row.deviceId,
  });
