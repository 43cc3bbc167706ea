import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { CloseVisitArgs, VisitInput, ZoneNoteInput } from '../visit.input.js';
import { Visit, showVisit } from '../visit.type.js';
import { ZoneNote, showZoneNote } from '../zone-notes/zone-note.type.js';
import { Arrive } from './arrive.service.js';
import { CloseVisit } from './close-visit.service.js';
import { NoteZone } from './note-zone.service.js';

const note = (text: string | null | undefined): string | null => text?.trim() || null;

/** What the phone tells of a visit. */
@Resolver()
export class VisitDeedsResolver {
  constructor(
    private readonly arriving: Arrive,
    private readonly noting: NoteZone,
    private readonly closing: CloseVisit,
  ) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => Visit)
  async arrive(@Tx() tx: OrganizationTransaction, @Args('input', { type: () => VisitInput }) input: VisitInput): Promise<Visit> {
    return showVisit(await this.arriving.run(tx, input));
  }

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => ZoneNote)
  async noteZone(@Tx() tx: OrganizationTransaction, @Args('input', { type: () => ZoneNoteInput }) input: ZoneNoteInput): Promise<ZoneNote> {
    return showZoneNote((await this.noting.run(tx, input)).note);
  }

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => Visit)
  async closeVisit(
    @Tx() tx: OrganizationTransaction,
    @Args() { id, version, closedAt, doneNote, leftNote }: CloseVisitArgs,
  ): Promise<Visit> {
    return showVisit(await this.closing.run(tx, id, version, { closedAt, doneNote: note(doneNote), leftNote: note(leftNote) }));
  }
}
