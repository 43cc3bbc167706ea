import { Args, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { approvedVersionOfReport } from './loaders/approved-version.loader.js';
import { OpenEdition } from './open-edition.service.js';
import { ReportContent, showContent } from './report-content.type.js';
import { waterReports } from './water-report.repository.js';
import { WaterReport, showWaterReport } from './water-report.type.js';

/** One report, and what it says. */
@Resolver(() => WaterReport)
export class ReportContentResolver {
  constructor(private readonly opened: OpenEdition) {}

  @Allow(Permission.ReadReports)
  @Query(() => WaterReport, { name: 'waterReport', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<WaterReport | null> {
    const row = await waterReports.one(tx, id);
    return row && showWaterReport(row);
  }

  /** the version of the data with which it was approved; null for a draft */
  @ResolveField(() => String, { nullable: true })
  approvedVersion(@Tx() tx: OrganizationTransaction, @Parent() { id }: WaterReport): Promise<string | null> {
    return approvedVersionOfReport.of(tx).load(id);
  }

  /** a draft from what is on record now; what was approved or sent as it was made then */
  @ResolveField(() => ReportContent)
  async content(@Tx() tx: OrganizationTransaction, @Parent() report: WaterReport): Promise<ReportContent> {
    return showContent((await this.opened.run(tx, report.id)).model);
  }

  /** the letters for which its PDF has no sign, each once; a sign that says so stands there instead. Empty where all are printed */
  @ResolveField(() => String)
  async unprinted(@Tx() tx: OrganizationTransaction, @Parent() report: WaterReport): Promise<string> {
    return this.opened.unprintedOf(await this.opened.run(tx, report.id));
  }
}
