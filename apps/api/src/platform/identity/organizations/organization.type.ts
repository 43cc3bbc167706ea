import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Language, UnitSystem } from '../../graphql/choices.type.js';
import { DateScalar, DateTimeScalar } from '../../graphql/scalars.js';
import { nowOf, todayOf } from '../../jobs/clock.js';
import type { OrganizationItself } from './organization.entity.js';

/** The company that is signed in. */
@ObjectType()
export class Organization {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => String)
  name: string;

  @Field(() => UnitSystem)
  units: UnitSystem;

  @Field(() => Language)
  language: Language;

  @Field(() => String)
  timeZone: string;

  @Field(() => String)
  currency: string;

  /** its local date; a demonstration's stands still */
  @Field(() => DateScalar)
  today: string;

  @Field(() => DateTimeScalar)
  now: Date;

  @Field(() => Boolean)
  isDemo: boolean;

  @Field(() => Float)
  leastConfidence: number;

  @Field(() => Float)
  leastLitres: number;

  @Field(() => Float)
  leastMoney: number;
}

export const showOrganization = (row: OrganizationItself): Organization =>
  Object.assign(new Organization(), {
    id: row.id,
    version: row.version,
    name: row.name,
    units: UnitSystem[row.units],
    language: Language[row.language],
    timeZone: row.timeZone,
    currency: row.currency,
    today: todayOf(row),
    now: nowOf(row),
    isDemo: row.isDemo,
    leastConfidence: row.leastConfidence,
    leastLitres: row.leastLitres,
    leastMoney: row.leastMoney,
  });
