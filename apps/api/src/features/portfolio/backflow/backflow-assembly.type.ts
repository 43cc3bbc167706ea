import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { BackflowAssemblyRow } from './backflow-assembly.entity.js';

/** Keeps irrigation water out of the drinking water; tested by a certified tester. */
@ObjectType()
export class BackflowAssembly {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => String, { nullable: true })
  location: string | null;

  @Field(() => String, { nullable: true })
  kind: string | null;

  @Field(() => DateScalar, { nullable: true })
  lastTestedOn: string | null;

  @Field(() => DateScalar, { nullable: true })
  nextTestDueOn: string | null;
}

export const showBackflowAssembly = (row: BackflowAssemblyRow): BackflowAssembly => Object.assign(new BackflowAssembly(), row);
