import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ReadingRow } from './reading.entity.js';
import type { JudgedRegister } from '@rillbook/metering/intervals/register-history.js';

/** A meter's register at an instant. */
@ObjectType()
export class Reading {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  meterId: string;

  @Field(() => DateTimeScalar)
  readAt: Date;

  @Field(() => Float)
  register: number;

  @Field(() => String)
  source: string;

  @Field(() => String, { nullable: true })
  note: string | null;

  @Field(() => ID, { nullable: true })
  replacedById: string | null;

  personId: string | null;

  @Field(() => DateTimeScalar)
  recordedAt: Date;

  /** null where it cannot be known: the first reading, or a register that ran backwards */
  @Field(() => Float, { nullable: true })
  litresSinceLast: number | null;

  /** a code: first, ok, rollover, lower than last, implausibly high, stuck, unit mixed up, digits swapped, digit mistyped */
  @Field(() => String)
  judgement: string;
}

export const showReading = (row: ReadingRow, judged: JudgedRegister): Reading =>
  Object.assign(new Reading(), {
    id: row.id,
    meterId: row.meterId,
    readAt: row.readAt,
    register: row.register,
    source: row.source,
    note: row.note,
    replacedById: row.replacedById,
    personId: row.personId,
    recordedAt: row.recordedAt,
    litresSinceLast: judged.litresSinceLast,
    judgement: judged.judgement,
  });
