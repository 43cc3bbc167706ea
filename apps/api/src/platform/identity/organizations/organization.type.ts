import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Language, UnitSystem } from '../../graphql/choices.type.js';
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

  @Field(() => Boolean)
  isDemo: boolean;

  @Field(() => Float)
  leastConfidence: number;

  @Field(() => Float)
  leastLitres: number;

  @Field(() => Float)
  leastMoney: number;

  /** the day on which a demonstration's world stands still; its clock is shown, not this */
  standsStillOn: string | null;
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
    standsStillOn: row.standsStillOn,
    isDemo: row.isDemo,
    leastConfidence: row.leastConfidence,
    leastLitres: row.leastLitres,
    leastMoney: row.leastMoney,
  });
