import { Field, Float, ID, InputType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../../platform/graphql/scalars.js';

/** A photo as the phone tells of it, as often as it needs to; its picture is sent after. */
@InputType()
export class PhotoInput {
  /** made by the phone */
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  visitId: string;

  @Field(() => String)
  kind: string;

  @Field(() => DateTimeScalar)
  takenAt: Date;

  @Field(() => ID, { nullable: true })
  zoneId?: string | null;

  @Field(() => ID, { nullable: true })
  findingId?: string | null;

  /** what of a zone walk it shows: then it is a photo of that finding */
  @Field(() => String, { nullable: true })
  noteKind?: string | null;

  @Field(() => ID, { nullable: true })
  workOrderId?: string | null;

  @Field(() => String, { nullable: true })
  word?: string | null;

  /** where it was taken, only where the person wants that kept; WGS 84 */
  @Field(() => Float, { nullable: true })
  latitude?: number | null;

  @Field(() => Float, { nullable: true })
  longitude?: number | null;
}
