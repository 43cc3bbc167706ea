import { Field, InputType, Int, ObjectType } from '@nestjs/graphql';
import { dataUrlOf } from './logo.js';
import type { ReportBrandRow } from './report-brand.entity.js';

/** The dress of an organization's reports. */
@ObjectType()
export class ReportBrand {
  /** null for the organization's own */
  @Field(() => String, { nullable: true })
  name: string | null;

  /** #rrggbb */
  @Field(() => String, { nullable: true })
  colour: string | null;

  /** a data address of a PNG or JPEG */
  @Field(() => String, { nullable: true })
  logo: string | null;

  @Field(() => String, { nullable: true })
  contact: string | null;

  @Field(() => Int)
  version: number;
}

/** What is said of it. */
@InputType()
export class ReportBrandInput {
  @Field(() => String, { nullable: true })
  name?: string | null;

  /** #rrggbb, dark enough to be read on white */
  @Field(() => String, { nullable: true })
  colour?: string | null;

  /** a data address of a PNG or JPEG of at most 300 kB; left out, the logo stays; null takes it away */
  @Field(() => String, { nullable: true })
  logo?: string | null;

  @Field(() => String, { nullable: true })
  contact?: string | null;
}

const PLAIN = { name: null, colour: null, logo: null, contact: null, version: 0 };

export function showBrand(row: ReportBrandRow | null): ReportBrand {
  const { name, colour, logo, contact, version } = row ?? PLAIN;
  return Object.assign(new ReportBrand(), { name, colour, logo: dataUrlOf(logo), contact, version });
}
