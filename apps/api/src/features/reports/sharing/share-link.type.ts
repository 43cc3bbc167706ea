import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ShareLinkRow } from './share-link.entity.js';

/** A link that shows one report to whoever has it, until it ends. */
@ObjectType()
export class ShareLink {
  @Field(() => ID)
  id: string;

  @Field(() => DateTimeScalar)
  createdAt: Date;

  @Field(() => DateTimeScalar)
  expiresAt: Date;

  @Field(() => DateTimeScalar, { nullable: true })
  revokedAt: Date | null;

  /** how often it was opened */
  @Field(() => Int)
  visits: number;

  /** where the report is shown; told once, when the link is made, and kept nowhere */
  @Field(() => String, { nullable: true })
  path: string | null;
}

export function showLink({ id, createdAt, expiresAt, revokedAt }: ShareLinkRow, visits: number, path: string | null = null): ShareLink {
  return Object.assign(new ShareLink(), { id, createdAt, expiresAt, revokedAt, visits, path });
}
