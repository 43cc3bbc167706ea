import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { ControllerPlan, PlanBreach } from '../offers/controller-plan.type.js';

/** A controller as it is set now, under rules that would change. */
@ObjectType()
export class ControllerUnderRule {
  @Field(() => ID)
  controllerId: string;

  @Field(() => Property)
  property: Property;

  @Field(() => Controller)
  controller: Controller;

  /** what it breaks as it is set now; null where its settings are not known */
  @Field(() => [PlanBreach], { nullable: true })
  breaches: PlanBreach[] | null;

  /** what it would be set to; only where it breaks anything */
  @Field(() => ControllerPlan, { nullable: true })
  plan: ControllerPlan | null;
}

/** What a supplier's new rule would change, some of its properties at a time. */
@ObjectType()
export class RuleChange {
  @Field(() => MonthScalar)
  month: string;

  /** properties of the supplier in all */
  @Field(() => Int)
  properties: number;

  @Field(() => [ControllerUnderRule])
  controllers: ControllerUnderRule[];
}
