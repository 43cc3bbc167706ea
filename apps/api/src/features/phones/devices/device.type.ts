import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { DeviceRow } from './device.entity.js';

/** A phone, as it was last heard of: what it said then is still on it. */
@ObjectType()
export class Device {
  @Field(() => ID)
  id: string;

  @Field(() => String, { nullable: true })
  name: string | null;

  @Field(() => String, { nullable: true })
  appVersion: string | null;

  @Field(() => DateTimeScalar)
  heardAt: Date;

  /** whole days since it was heard */
  @Field(() => Int)
  silentDays: number;

  @Field(() => Int)
  waiting: number;

  @Field(() => Int)
  photosWaiting: number;

  @Field(() => Int)
  refused: number;

  @Field(() => DateTimeScalar, { nullable: true })
  oldestWaitingAt: Date | null;

  personId: string | null;
}

const DAY_MS = 86_400_000;

export function showDevice(row: DeviceRow, now: Date): Device {
  const { organizationId: _, ...shown } = row;
  const silentDays = Math.max(0, Math.floor((now.getTime() - row.heardAt.getTime()) / DAY_MS));
  return Object.assign(new Device(), shown, { silentDays });
}
