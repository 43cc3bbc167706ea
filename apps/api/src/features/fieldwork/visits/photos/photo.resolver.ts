import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { AnnouncePhoto } from './announce-photo.service.js';
import { PhotoInput } from './photo.input.js';
import { Photo, showPhoto } from './photo.type.js';

/** Photos are told of here; their pictures go by HTTP. */
@Resolver(() => Photo)
export class PhotoResolver {
  constructor(private readonly announcing: AnnouncePhoto) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => Photo)
  async announcePhoto(@Tx() tx: OrganizationTransaction, @Args('input', { type: () => PhotoInput }) input: PhotoInput): Promise<Photo> {
    return showPhoto(await this.announcing.run(tx, input));
  }
}
