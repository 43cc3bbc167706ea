import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { reportOfId } from '../kept/loaders/report-of-id.loader.js';
import { showWaterReport, WaterReport } from '../kept/water-report.type.js';
import { AnswerQuestion } from './answering/answer-question.service.js';
import { AskOffice } from './ask-office.service.js';
import { clientQuestions } from './client-question.repository.js';
import { ClientQuestion, showQuestion } from './client-question.type.js';

/** Questions of clients to the office. */
@Resolver(() => ClientQuestion)
export class ClientQuestionResolver {
  constructor(
    private readonly asking: AskOffice,
    private readonly answering: AnswerQuestion,
  ) {}

  /** the newest first; a client's own, or all */
  @Allow(Permission.ReadReports)
  @Query(() => [ClientQuestion], { name: 'clientQuestions' })
  async all(@Tx() tx: OrganizationTransaction): Promise<ClientQuestion[]> {
    return (await clientQuestions.all(tx)).map(showQuestion);
  }

  @ResolveField(() => String)
  async clientName(@Tx() tx: OrganizationTransaction, @Parent() { clientId }: ClientQuestion): Promise<string> {
    return (await clientOfId.of(tx).load(clientId))?.name ?? '';
  }

  /** name of the property that it is about; null where it is about none */
  @ResolveField(() => String, { nullable: true })
  async about(@Tx() tx: OrganizationTransaction, @Parent() { propertyId }: ClientQuestion): Promise<string | null> {
    return propertyId === null ? null : ((await propertyOfId.of(tx).load(propertyId))?.name ?? null);
  }

  /** the report that it is about; null where it is about none, or that is gone */
  @ResolveField(() => WaterReport, { nullable: true })
  async report(@Tx() tx: OrganizationTransaction, @Parent() { reportId }: ClientQuestion): Promise<WaterReport | null> {
    const row = reportId === null ? null : await reportOfId.of(tx).load(reportId);
    return row && showWaterReport(row);
  }

  /** a client asks about their water, a property or a report */
  @Allow(Permission.ReadReports)
  @Mutation(() => ClientQuestion)
  async askOffice(
    @Tx() tx: OrganizationTransaction,
    @Args('question') question: string,
    @Args('propertyId', { type: () => ID, nullable: true }) propertyId: string | null | undefined,
    @Args('reportId', { type: () => ID, nullable: true }) reportId: string | null | undefined,
  ): Promise<ClientQuestion> {
    return showQuestion(await this.asking.run(tx, { question, propertyId: propertyId ?? null, reportId: reportId ?? null }));
  }

  /** the answer is shown where it was asked, and goes by mail to whoever asked, where an address is known */
  @Allow(Permission.WriteReports)
  @Mutation(() => ClientQuestion)
  async answerQuestion(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('answer') answer: string,
  ): Promise<ClientQuestion> {
    return showQuestion(await this.answering.run(tx, id, answer));
  }

  /** puts a question away that needs no answer; `dismissed: false` takes it back */
  @Allow(Permission.WriteReports)
  @Mutation(() => ClientQuestion)
  async dismissQuestion(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('dismissed', { type: () => Boolean, defaultValue: true }) dismissed: boolean,
  ): Promise<ClientQuestion> {
    if (!(await clientQuestions.one(tx, id))) throw platformProblems.notFound({ thing: 'question', id });
    await clientQuestions.change(tx, id, { dismissedAt: dismissed ? new Date() : null, dismissedBy: dismissed ? tx.actor.personId : null });
    return showQuestion((await clientQuestions.one(tx, id))!);
  }
}
