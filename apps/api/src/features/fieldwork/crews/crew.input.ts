import { Field, ID, InputType } from '@nestjs/graphql';

/** What is said of a crew. Members left out stay as they are. */
@InputType()
export class CrewInput {
  @Field(() => String)
  name: string;

  @Field(() => [ID], { nullable: true })
  memberIds?: string[] | null;
}
