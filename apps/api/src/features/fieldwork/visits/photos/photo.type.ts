import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { PhotoRow } from './photo.entity.js';

/** A photo of field work. Its picture is at /api/photos/{id} once it has arrived. */
@ObjectType()
export class Photo {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  propertyId: string;

  @Field(() => ID, { nullable: true })
  visitId: string | null;

  @Field(() => ID, { nullable: true })
  zoneId: string | null;

  @Field(() => ID, { nullable: true })
  findingId: string | null;

  @Field(() => ID, { nullable: true })
  workOrderId: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => String, { nullable: true })
  word: string | null;

  @Field(() => DateTimeScalar)
  takenAt: Date;

  /** where it was taken; null unless whoever took it wanted that kept */
  @Field(() => Float, { nullable: true })
  latitude: number | null;

  @Field(() => Float, { nullable: true })
  longitude: number | null;

  /** null while the picture is still on the phone */
  @Field(() => DateTimeScalar, { nullable: true })
  arrivedAt: Date | null;

  @Field(() => Int, { nullable: true })
  width: number | null;

  @Field(() => Int, { nullable: true })
  height: number | null;
}

export function showPhoto(row: PhotoRow): Photo {
  const { id, propertyId, visitId, zoneId, findingId, workOrderId, kind, word } = row;
  const { takenAt, latitude, longitude, arrivedAt, width, height } = row;
  return Object.assign(new Photo(), {
    ...{ id, propertyId, visitId, zoneId, findingId, workOrderId, kind, word },
    ...{ takenAt, latitude, longitude, arrivedAt, width, height },
  });
}
