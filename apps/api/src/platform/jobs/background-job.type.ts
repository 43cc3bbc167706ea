import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { Reason } from '../graphql/reason.type.js';
import { DateTimeScalar } from '../graphql/scalars.js';
import type { BackgroundJobRow } from './background-job.entity.js';

/** Work in the background: what, how far, how it ended. */
@ObjectType()
export class BackgroundJob {
  @Field(() => ID)
  id: string;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  state: string;

  @Field(() => Int)
  done: number;

  @Field(() => Int)
  total: number;

  /** how it ended, in a sentence */
  @Field(() => String, { nullable: true })
  says: string | null;

  /** the same as a code with its details, the code of a problem where it failed; null where only the sentence is known */
  @Field(() => Reason, { nullable: true })
  outcome: Reason | null;

  /** it waits until then; null where it does not wait, or has begun */
  @Field(() => DateTimeScalar, { nullable: true })
  waitsUntil: Date | null;

  @Field(() => DateTimeScalar)
  createdAt: Date;

  @Field(() => DateTimeScalar, { nullable: true })
  finishedAt: Date | null;
}

export const showJob = (row: BackgroundJobRow): BackgroundJob =>
  Object.assign(new BackgroundJob(), {
    id: row.id,
    kind: row.kind,
    state: row.state,
    done: row.done,
    total: row.total,
    says: row.says,
    outcome: row.outcome && Object.assign(new Reason(), row.outcome),
    waitsUntil: waitsUntil(row),
    createdAt: row.createdAt,
    finishedAt: row.finishedAt,
  });

function waitsUntil({ state, payload }: BackgroundJobRow): Date | null {
  const at = payload['waitsUntil'];
  return state === 'queued' && typeof at === 'string' ? new Date(at) : null;
}
