import { Field, ID, InputType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { ProgramInput } from '../programs/program.input.js';

/** Settings as a device sends them, as often as it needs to. */
@InputType()
export class SettingsInput {
  /** made by the device when the settings were saved, never per attempt */
  @Field(() => ID)
  deviceRecordId: string;

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

  @Field(() => [ProgramInput])
  programs: ProgramInput[];
}
