import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ShareLinkRow } from './share-link.entity.js';
import type { LinkUse } from './share-link.repository.js';

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

  /** how often its page was opened */
  @Field(() => Int)
  visits: number;

  /** how often a file was taken by it */
  @Field(() => Int)
  downloads: number;

  /** where the report is shown; told to the device that asks for the link, under the name that it gave it, and kept nowhere */
  @Field(() => String, { nullable: true })
  path: string | null;
}

export function showLink({ id, createdAt, expiresAt, revokedAt }: ShareLinkRow, use: LinkUse, path: string | null = null): ShareLink {
  return Object.assign(new ShareLink(), { id, createdAt, expiresAt, revokedAt, ...use, path });
}
