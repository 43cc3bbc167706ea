import { Module } from '@nestjs/common';
import { PortfolioRowResolver } from './portfolio-row.resolver.js';
import { PortfolioResolver } from './portfolio.resolver.js';

/** The pages that look over all features: the portfolio, the month. */
@Module({ providers: [PortfolioResolver, PortfolioRowResolver] })
export class OverviewModule {}
