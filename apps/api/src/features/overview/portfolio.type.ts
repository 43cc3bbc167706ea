import { ArgsType, Field, Float, ID, InputType, Int, ObjectType, registerEnumType } from '@nestjs/graphql';
import { DateScalar, MonthScalar } from '../../platform/graphql/scalars.js';
import type { PortfolioLine } from './portfolio.repository.js';

/** How the portfolio is ranked. */
export enum PortfolioSort {
  money = 'money',
  volume = 'volume',
  name = 'name',
}
registerEnumType(PortfolioSort, { name: 'PortfolioSort' });

/** What the portfolio is narrowed to. */
@InputType()
export class PortfolioFilter {
  @Field(() => String, { nullable: true })
  text?: string | null;

  @Field(() => String, { nullable: true })
  kind?: string | null;

  /** a crew's id, or 'nobody' */
  @Field(() => ID, { nullable: true })
  who?: string | null;

  /** settings, unexplained, too little, not counted */
  @Field(() => String, { nullable: true })
  reason?: string | null;
}

/** Which rows of the list. */
@ArgsType()
export class PortfolioPage {
  @Field(() => Int, { defaultValue: 100 })
  first: number;

  /** the property after which the rows begin */
  @Field(() => String, { nullable: true })
  after: string | null;
}

/** One property of the list: its account, why it stands here, who is on it. */
@ObjectType()
export class PortfolioRow {
  line: PortfolioLine;
  month: string;

  @Field(() => Int)
  findingCount: number;
}

/** What the whole list adds up to. */
@ObjectType()
export class PortfolioSums {
  @Field(() => Int)
  properties: number;

  @Field(() => Int)
  overProperties: number;

  @Field(() => Float)
  aboveNeedLitres: number;

  @Field(() => Float, { nullable: true })
  aboveNeedMoney: number | null;

  @Field(() => Float)
  settingsLitres: number;

  @Field(() => Float)
  unexplainedLitres: number;

  /** above need where settings are not known, so that nobody can say which of the two it is */
  @Field(() => Float)
  unsplitLitres: number;

  @Field(() => Int)
  underProperties: number;

  @Field(() => Int)
  notCounted: number;
}

/** The properties of a month, ranked. */
@ObjectType()
export class Portfolio {
  @Field(() => MonthScalar)
  month: string;

  /** months that have accounts, the newest first */
  @Field(() => [MonthScalar])
  months: string[];

  @Field(() => DateScalar, { nullable: true })
  through: string | null;

  @Field(() => PortfolioSums)
  sums: PortfolioSums;

  @Field(() => [PortfolioRow])
  rows: PortfolioRow[];

  @Field(() => Int)
  total: number;

  /** what to pass as `after` for the next rows */
  @Field(() => String, { nullable: true })
  next: string | null;
}

/** How far a month is. */
@ObjectType()
export class MonthBoard {
  @Field(() => MonthScalar)
  month: string;

  @Field(() => Int)
  properties: number;

  @Field(() => Int)
  readingsIn: number;

  @Field(() => Int)
  accountsComputed: number;

  @Field(() => Int)
  findingsOpen: number;

  @Field(() => Int)
  findingsDecided: number;

  @Field(() => Int)
  workGivenOut: number;

  @Field(() => Int)
  workDone: number;

  @Field(() => Int)
  workWaitingForApproval: number;
}
