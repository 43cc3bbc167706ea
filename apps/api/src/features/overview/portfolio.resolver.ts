import { Args, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../platform/graphql/scalars.js';
import { Allow } from '../../platform/identity/allow.js';
import { Permission } from '../../platform/identity/permission.js';
import { Tx } from '../../platform/identity/tx.js';
import { organizations } from '../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../platform/jobs/clock.js';
import { platformProblems } from '../../platform/problems/platform.problems.js';
import { leastConfidence, monthsWithAccounts } from '../accounts/months/month-account.loader.js';
import { normalDeviate } from './normal-deviate.js';
import { portfolioSums } from './portfolio-sums.js';
import { type PortfolioOrder, portfolio } from './portfolio.repository.js';
import { MonthBoard, Portfolio, PortfolioFilter, PortfolioPage, PortfolioRow, PortfolioSort } from './portfolio.type.js';

const MOST_ROWS = 500;

/** The newest month of which anything is known; the organization's own before anything is. */
const newestMonth = async (tx: OrganizationTransaction): Promise<string> =>
  (await portfolio.newestMonth(tx)) ?? todayOf(await organizations.own(tx)).slice(0, 7);

/** The owner's and the office's first pages. */
@Resolver()
export class PortfolioResolver {
  @Allow(Permission.ReadPortfolio)
  @Query(() => Portfolio, { name: 'portfolio' })
  async portfolio(
    @Tx() tx: OrganizationTransaction,
    @Args('month', { type: () => MonthScalar, nullable: true }) wished: string | null,
    @Args('filter', { type: () => PortfolioFilter, nullable: true }) filter: PortfolioFilter | null,
    @Args('sort', { type: () => PortfolioSort, nullable: true, defaultValue: PortfolioSort.money }) sort: PortfolioOrder,
    @Args() page: PortfolioPage,
  ): Promise<Portfolio> {
    const { first, after } = page;
    if (first < 1 || first > MOST_ROWS)
      throw platformProblems.valueRefused({ field: 'first', found: first, expected: `1 to ${MOST_ROWS}` });
    const months = await monthsWithAccounts(tx);
    const month = wished ?? (await newestMonth(tx));
    const lines = await portfolio.lines(tx, month, filter ?? {}, { order: sort, deviate: normalDeviate(await leastConfidence(tx)) });
    const begin = after ? lines.findIndex((line) => line.propertyId === after) + 1 : 0;
    const shown = lines.slice(begin, begin + first);
    return Object.assign(new Portfolio(), {
      month,
      months,
      through: await portfolio.through(tx, month),
      sums: portfolioSums(lines),
      rows: shown.map((line) => Object.assign(new PortfolioRow(), { line, month, findingCount: line.findingCount })),
      total: lines.length,
      next: begin + first < lines.length ? shown.at(-1)!.propertyId : null,
    });
  }

  @Allow(Permission.ReadPortfolio)
  @Query(() => MonthBoard, { name: 'monthBoard' })
  async board(
    @Tx() tx: OrganizationTransaction,
    @Args('month', { type: () => MonthScalar, nullable: true }) wished: string | null,
  ): Promise<MonthBoard> {
    const month = wished ?? (await newestMonth(tx));
    return Object.assign(new MonthBoard(), { month, ...(await portfolio.board(tx, month)) });
  }
}
