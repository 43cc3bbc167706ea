import { Args, ID, Int, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { WaterReport } from '../kept/water-report.type.js';
import { linksOfReport } from './links-of-report.loader.js';
import { shareLinks, UNUSED } from './share-link.repository.js';
import { ShareLink, showLink } from './share-link.type.js';
import { ShareReport } from './share-report.service.js';

/** Links that show a report to whoever has them. */
@Resolver(() => WaterReport)
export class SharingResolver {
  constructor(private readonly sharing: ShareReport) {}

  /** none for who may not write reports */
  @ResolveField(() => [ShareLink])
  async links(@Tx() tx: OrganizationTransaction, @Parent() report: WaterReport): Promise<readonly ShareLink[]> {
    return roleIncludes(tx.actor.role, Permission.WriteReports) ? linksOfReport.of(tx).load(report.id) : [];
  }

  @Allow(Permission.WriteReports)
  @Mutation(() => ShareLink)
  shareReport(
    @Tx() tx: OrganizationTransaction,
    @Args('reportId', { type: () => ID }) reportId: string,
    @Args('days', { type: () => Int, defaultValue: 60 }) days: number,
    @Args('deviceRecordId', { type: () => ID, nullable: true }) name: string | null,
  ): Promise<ShareLink> {
    return this.sharing.run(tx, { reportId, days, name });
  }

  @Allow(Permission.WriteReports)
  @Mutation(() => ShareLink)
  async revokeShareLink(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<ShareLink> {
    if (!(await shareLinks.one(tx, id))) throw platformProblems.notFound({ thing: 'link', id });
    await shareLinks.revoke(tx, id);
    const use = await shareLinks.use(tx, [id]);
    return showLink((await shareLinks.one(tx, id))!, use.get(id) ?? UNUSED);
  }
}
