import { Field, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { Program, showProgram } from '../programs/program.type.js';
import type { SettingsRow } from './settings.entity.js';

/** Everything a controller is set to at a time. */
@ObjectType()
export class Settings {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  controllerId: string;

  @Field(() => DateTimeScalar)
  effectiveAt: Date;

  /** found, left or planned */
  @Field(() => String)
  record: string;

  /** on, off, weather or unknown */
  @Field(() => String)
  state: string;

  @Field(() => [Program])
  programs: Program[];

  personId: string | null;

  @Field(() => DateTimeScalar)
  recordedAt: Date;
}

export const showSettings = (row: SettingsRow): Settings =>
  Object.assign(new Settings(), {
    id: row.id,
    controllerId: row.controllerId,
    effectiveAt: row.effectiveAt,
    record: row.record,
    state: row.state,
    programs: row.programs.map(showProgram),
    personId: row.personId,
    recordedAt: row.recordedAt,
  });
