import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { Stop } from '../routes/stop.type.js';
import { visitOfStop, withdrawnOfStop } from './visit.loader.js';
import { Visit, showVisit } from './visit.type.js';
import { visitsOfProperty } from './visits-of-property.loader.js';
import { notesOfVisit } from './zone-notes/zone-note.loader.js';
import { ZoneNote, showZoneNote } from './zone-notes/zone-note.type.js';

/** What stands around a visit. */
@Resolver(() => Visit)
export class VisitFieldResolver {
  @ResolveField(() => String, { nullable: true })
  async recordedBy(@Tx() tx: OrganizationTransaction, @Parent() visit: Visit): Promise<string | null> {
    return visit.personId ? personNameOfId.of(tx).load(visit.personId) : null;
  }

  @ResolveField(() => [ZoneNote])
  async zoneNotes(@Tx() tx: OrganizationTransaction, @Parent() visit: Visit): Promise<ZoneNote[]> {
    return (await notesOfVisit.of(tx).load(visit.id)).map(showZoneNote);
  }
}

/** The latest visit to a stop. */
@Resolver(() => Stop)
export class StopVisitResolver {
  @ResolveField(() => Visit, { nullable: true })
  async visit(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<Visit | null> {
    const row = await visitOfStop.of(tx).load(stop.id);
    return row && showVisit(row);
  }

  /** An arrival by mistake that was taken back; it counts nowhere. */
  @ResolveField(() => Visit, { nullable: true })
  async withdrawnVisit(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<Visit | null> {
    const row = await withdrawnOfStop.of(tx).load(stop.id);
    return row && showVisit(row);
  }
}

/** The visits to a property, as far as the actor sees them; for a client none. */
@Resolver(() => Property)
export class PropertyVisitsResolver {
  @ResolveField(() => [Visit])
  async visits(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<Visit[]> {
    return (await visitsOfProperty.of(tx).load(property.id)).map(showVisit);
  }
}
