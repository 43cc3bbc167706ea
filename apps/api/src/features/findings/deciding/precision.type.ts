import { Field, Float, Int, ObjectType } from '@nestjs/graphql';

/** How often findings of a kind were worth a look, of those that somebody decided. */
@ObjectType()
export class FindingPrecision {
  @Field(() => String)
  kind: string;

  @Field(() => Int)
  decided: number;

  @Field(() => Int)
  ledToWork: number;

  /** resolved with what was found, or dismissed as there but known */
  @Field(() => Int)
  confirmed: number;

  /** those that led to work or were confirmed, of the decided [–] */
  @Field(() => Float)
  share: number;

  /** less than half of enough decided ones were worth a look: such findings are told last */
  @Field(() => Boolean)
  isSeldomUseful: boolean;
}
