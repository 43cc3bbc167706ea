import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { Finding } from '../../../findings/finding.type.js';
import { Property } from '../../../portfolio/properties/property.type.js';
import { crewsInScope } from '../../crews/crew-scope.js';
import { Visit } from '../visit.type.js';
import { photosOfVisit } from './photo.loader.js';
import { Photo, showPhoto } from './photo.type.js';
import { photosOfFinding } from './photos-of-finding.loader.js';
import { photosOfProperty } from './photos-of-property.loader.js';

/** The photos of a visit. */
@Resolver(() => Visit)
export class VisitPhotosResolver {
  @ResolveField(() => [Photo])
  async photos(@Tx() tx: OrganizationTransaction, @Parent() visit: Visit): Promise<Photo[]> {
    return (await photosOfVisit.of(tx).load(visit.id)).map(showPhoto);
  }
}

/** The photos that show a finding. */
@Resolver(() => Finding)
export class FindingPhotosResolver {
  @ResolveField(() => [Photo])
  async photos(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<Photo[]> {
    return (await photosOfFinding.of(tx).load(finding.id)).map(showPhoto);
  }
}

/** The photos of a property, for those who see the work of every crew. */
@Resolver(() => Property)
export class PropertyPhotosResolver {
  @ResolveField(() => [Photo])
  async photos(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<Photo[]> {
    return (await crewsInScope(tx)) === null ? (await photosOfProperty.of(tx).load(property.id)).map(showPhoto) : [];
  }
}
