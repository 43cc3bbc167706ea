import { Args, Float, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { requireMeter } from '../require-meter.js';
import { judgeRegister } from './judge-register.js';
import { RecordReading } from './record-reading.service.js';
import { RecordReadingResult, type ReadingConflict, readingConflict } from './record-reading-result.type.js';
import { ReadingInput } from './reading.input.js';
import { ReadingJudgement, showJudgement } from '../judging/reading-judgement.type.js';
import { Reading } from './reading.type.js';
import { showInHistory } from './show-in-history.js';

/** Readings: judged before they are saved, kept once. */
@Resolver(() => Reading)
export class ReadingResolver {
  constructor(private readonly record: RecordReading) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => RecordReadingResult)
  async recordReading(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => ReadingInput }) input: ReadingInput,
  ): Promise<Reading | ReadingConflict> {
    const { outcome, kept } = await this.record.run(tx, input);
    const shown = await showInHistory(tx, kept);
    return outcome === 'kept' ? shown : readingConflict(shown);
  }

  @Allow(Permission.RecordFieldwork)
  @Query(() => ReadingJudgement)
  async judgeReading(
    @Tx() tx: OrganizationTransaction,
    @Args('meterId', { type: () => ID }) meterId: string,
    @Args('readAt', { type: () => DateTimeScalar }) readAt: Date,
    @Args('register', { type: () => Float }) register: number,
  ): Promise<ReadingJudgement> {
    const meter = await requireMeter(tx, meterId);
    return showJudgement(await judgeRegister(tx, meter, { readAt, register }));
  }

  @ResolveField(() => String, { nullable: true })
  recordedBy(@Tx() tx: OrganizationTransaction, @Parent() reading: Reading): Promise<string | null> | null {
    return reading.personId ? personNameOfId.of(tx).load(reading.personId) : null;
  }
}
