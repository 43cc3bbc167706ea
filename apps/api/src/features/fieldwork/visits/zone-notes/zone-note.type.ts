import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { ZoneNoteRow } from './zone-note.entity.js';

/** Something seen on a zone walk. */
@ObjectType()
export class ZoneNote {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  visitId: string;

  @Field(() => ID, { nullable: true })
  zoneId: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => Int)
  count: number;

  @Field(() => String, { nullable: true })
  word: string | null;

  @Field(() => Boolean)
  repaired: boolean;

  @Field(() => DateTimeScalar)
  recordedAt: Date;
}

export function showZoneNote(row: ZoneNoteRow): ZoneNote {
  const { organizationId: _, personId: __, ...shown } = row;
  return Object.assign(new ZoneNote(), shown);
}
