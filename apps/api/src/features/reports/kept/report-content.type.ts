import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { figuresOf } from '../printing/figures-of-report.js';

/** A number of a report, as all its outputs show it. */
@ObjectType()
export class ReportFigure {
  /** unique among those of its property */
  @Field(() => ID)
  id: string;

  /** null for a number of all properties together */
  @Field(() => ID, { nullable: true })
  propertyId: string | null;

  @Field(() => String)
  section: string;

  @Field(() => String)
  label: string;

  /** rounded as it is shown */
  @Field(() => Float, { nullable: true })
  value: number | null;

  @Field(() => String)
  unit: string;

  /** as it is written, without its unit */
  @Field(() => String)
  shown: string;

  /** why it is not known, in words */
  @Field(() => String, { nullable: true })
  reason: string | null;
}

/** What a report says: the sentences and numbers that its PDF, its page and its files are made from. */
@ObjectType()
export class ReportContent {
  @Field(() => String)
  title: string;

  @Field(() => String)
  language: string;

  @Field(() => MonthScalar)
  from: string;

  @Field(() => MonthScalar)
  until: string;

  @Field(() => String)
  verdict: string;

  @Field(() => [ReportFigure])
  figures: ReportFigure[];

  /** fingerprint of the data that it was made from */
  @Field(() => String)
  dataVersion: string;
}

export function showContent(model: ReportModel): ReportContent {
  return Object.assign(new ReportContent(), {
    title: `${model.title}, ${model.periodInWords}`,
    language: model.language,
    from: model.period.from,
    until: model.period.until,
    verdict: model.verdict,
    figures: figuresOf(model).map(({ propertyId, section, figure }) =>
      Object.assign(new ReportFigure(), { propertyId, section, ...figure }),
    ),
    dataVersion: model.dataVersion,
  });
}
