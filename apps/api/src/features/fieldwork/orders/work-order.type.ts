import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { costOf } from './work-order-cost.js';
import type { WorkOrderRow } from './work-order.entity.js';

/** A part that a repair needs. */
@ObjectType()
export class Part {
  @Field(() => String)
  name: string;

  @Field(() => Float)
  count: number;

  @Field(() => Float)
  price: number;
}

/** The order that overtakes another by a newer plan of the same controller. */
@ObjectType()
export class OvertakingOrder {
  @Field(() => ID)
  orderId: string;

  /** when its settings were planned */
  @Field(() => DateTimeScalar)
  plannedAt: Date;

  /** open, given out or done */
  @Field(() => String)
  state: string;
}

/** A piece of work on a property. */
@ObjectType()
export class WorkOrder {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID, { nullable: true })
  controllerId: string | null;

  @Field(() => ID, { nullable: true })
  meterId: string | null;

  @Field(() => ID, { nullable: true })
  zoneId: string | null;

  @Field(() => ID, { nullable: true })
  stopId: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  state: string;

  @Field(() => String)
  what: string;

  @Field(() => Float, { nullable: true })
  estimateMinutes: number | null;

  /** the first day on which it may be done; null: any */
  @Field(() => DateScalar, { nullable: true })
  notBefore: string | null;

  /** the last day on which it may be done */
  @Field(() => DateScalar, { nullable: true })
  dueOn: string | null;

  /** what somebody of the crew must be able to do */
  @Field(() => [String])
  skills: string[];

  @Field(() => Float, { nullable: true })
  labourHours: number | null;

  @Field(() => Float, { nullable: true })
  labourRate: number | null;

  @Field(() => [Part])
  parts: Part[];

  /** whether the client asked for its price and decides on it */
  @Field(() => Boolean)
  isOffer: boolean;

  /** labour hours x rate, and the parts; null where nothing is stated */
  @Field(() => Float, { nullable: true })
  cost: number | null;

  /** when the rain pause ends that is to be set; null for every other work */
  @Field(() => DateTimeScalar, { nullable: true })
  pauseUntil: Date | null;

  @Field(() => String, { nullable: true })
  doneNote: string | null;

  @Field(() => String, { nullable: true })
  leftNote: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  doneAt: Date | null;

  @Field(() => DateTimeScalar)
  createdAt: Date;

  propertyId: string;
  findingId: string | null;
  plannedSettingsId: string | null;
}

/** A work order's row as the screens see it. */
export function showWorkOrder(row: WorkOrderRow): WorkOrder {
  const { organizationId: _, typed: __, approvedBy: ___, approvedAt: ____, ...shown } = row;
  return Object.assign(new WorkOrder(), shown, { cost: costOf(row) });
}
