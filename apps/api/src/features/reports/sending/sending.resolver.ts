import { Inject } from '@nestjs/common';
import { Args, ID, Int, Mutation, Parent, ResolveField, Resolver, createUnionType } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { ChangedMeanwhile, changedMeanwhile } from '../../../platform/graphql/outcomes.type.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { BackgroundJob, showJob } from '../../../platform/jobs/background-job.type.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { judgeWholeMonths } from '../kept/asked-period.js';
import type { WaterReportRow } from '../kept/water-report.entity.js';
import { WaterReport, showWaterReport } from '../kept/water-report.type.js';
import { ApproveReport } from './approve-report.service.js';
import { APPROVE_REPORTS, DRAFT_REPORTS } from './draft-reports.job.js';
import { addressesOf } from './mails/addresses.service.js';
import { mailStops } from './mails/mail-stop.repository.js';
import { mailsOfReport } from './mails/mails-of-report.loader.js';
import { ReopenReport } from './reopen-report.service.js';
import { MailFound, ReportMail, showMail } from './mails/report-mail.type.js';
import { SendReports } from './send-reports.service.js';
import { SettleMail } from './settle-mail.service.js';

/** A report as it now is, or that somebody changed it meanwhile. */
export const ReportDecided = createUnionType({
  name: 'ReportDecided',
  types: () => [WaterReport, ChangedMeanwhile] as const,
  resolveType: (value: object) => value.constructor as never,
});

const decided = (outcome: WaterReportRow | VersionConflict): object =>
  outcome instanceof VersionConflict ? changedMeanwhile(outcome) : showWaterReport(outcome);

/** Drafts, approvals, sending, and what became of each mail. */
@Resolver(() => WaterReport)
export class SendingResolver {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly approve: ApproveReport,
    private readonly reopen: ReopenReport,
    private readonly sending: SendReports,
    private readonly settling: SettleMail,
  ) {}

  /** null for who may not write reports */
  @ResolveField(() => [ReportMail])
  async mails(@Tx() tx: OrganizationTransaction, @Parent() report: WaterReport): Promise<ReportMail[]> {
    if (!roleIncludes(tx.actor.role, Permission.WriteReports)) return [];
    return (await mailsOfReport.of(tx).load(report.id)).map(showMail);
  }

  /** addresses of the client that want no more reports; none for who may not write reports */
  @ResolveField(() => [String])
  async stoppedAddresses(@Tx() tx: OrganizationTransaction, @Parent() { clientId }: WaterReport): Promise<readonly string[]> {
    return roleIncludes(tx.actor.role, Permission.WriteReports) ? (await addressesOf(tx, clientId)).stopped : [];
  }

  /** a recipient who wanted no more reports has asked for them again */
  @Allow(Permission.WriteReports)
  @Mutation(() => Boolean)
  async mailAgain(@Tx() tx: OrganizationTransaction, @Args('email') email: string): Promise<boolean> {
    await mailStops.lift(tx, email);
    return true;
  }

  /** a draft for each client with a property, where there is none for the period yet */
  @Allow(Permission.WriteReports)
  @Mutation(() => BackgroundJob)
  async draftReports(
    @Tx() tx: OrganizationTransaction,
    @Args('fromOn', { type: () => DateScalar }) fromOn: string,
    @Args('untilOn', { type: () => DateScalar }) untilOn: string,
  ): Promise<BackgroundJob> {
    judgeWholeMonths({ fromOn, untilOn });
    return showJob(await this.jobs.ask(tx, DRAFT_REPORTS, { fromOn, untilOn }));
  }

  /** dataVersion is of the content that was looked at: where the figures are not those any more, nothing is approved */
  @Allow(Permission.WriteReports)
  @Mutation(() => ReportDecided)
  async approveReport(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('dataVersion', { type: () => String, nullable: true }) dataVersion: string | null | undefined,
  ): Promise<object> {
    return decided(await this.approve.run(tx, id, version, dataVersion ?? null));
  }

  /**
   * many at once, in the background; those that cannot be made are named and stay drafts. dataVersions are of the contents that were looked at, one
   * for each id: what has changed since is not approved
   */
  @Allow(Permission.WriteReports)
  @Mutation(() => BackgroundJob)
  async approveReports(
    @Tx() tx: OrganizationTransaction,
    @Args('ids', { type: () => [ID] }) ids: string[],
    @Args('dataVersions', { type: () => [String], nullable: true }) dataVersions: string[] | null | undefined,
  ): Promise<BackgroundJob> {
    if (dataVersions && dataVersions.length !== ids.length)
      throw platformProblems.valueRefused({
        field: 'dataVersions',
        found: dataVersions.length,
        expected: `one for each of ${ids.length} ids`,
      });
    return showJob(await this.jobs.ask(tx, APPROVE_REPORTS, { reportIds: ids, dataVersions: dataVersions ?? null }));
  }

  /** takes the approval back, as long as nothing may have reached anybody */
  @Allow(Permission.WriteReports)
  @Mutation(() => ReportDecided)
  async reopenReport(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
  ): Promise<object> {
    return decided(await this.reopen.run(tx, id, version));
  }

  /** now, or in the morning of a day where the client's first property lies */
  @Allow(Permission.WriteReports)
  @Mutation(() => [WaterReport])
  async sendReports(
    @Tx() tx: OrganizationTransaction,
    @Args('ids', { type: () => [ID] }) ids: string[],
    @Args('onDay', { type: () => DateScalar, nullable: true }) onDay: string | null | undefined,
  ): Promise<WaterReport[]> {
    return (await this.sending.run(tx, ids, onDay ?? null)).map(showWaterReport);
  }

  /** what a person found out about a mail that nobody knows of, or that came back */
  @Allow(Permission.WriteReports)
  @Mutation(() => ReportMail)
  async settleMail(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('found', { type: () => MailFound }) found: MailFound,
  ): Promise<ReportMail> {
    return showMail(await this.settling.run(tx, id, found));
  }
}
