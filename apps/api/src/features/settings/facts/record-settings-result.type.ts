import type { Type } from '@nestjs/common';
import { Field, ObjectType, createUnionType } from '@nestjs/graphql';
import { Settings } from './settings.type.js';

/** Other settings are kept under this name, or for this controller, time and record. */
@ObjectType()
export class SettingsConflict {
  @Field(() => Settings)
  kept: Settings;
}

export const settingsConflict = (kept: Settings): SettingsConflict => Object.assign(new SettingsConflict(), { kept });

/** What became of settings that were sent. */
export const RecordSettingsResult = createUnionType({
  name: 'RecordSettingsResult',
  types: () => [Settings, SettingsConflict] as const,
  resolveType: (value: object) => value.constructor as Type,
});
