import type { Type } from '@nestjs/common';
import { Field, ObjectType, createUnionType } from '@nestjs/graphql';
import { Reading } from './reading.type.js';

/** Something else is kept under this name, or for this meter and instant. */
@ObjectType()
export class ReadingConflict {
  @Field(() => Reading)
  kept: Reading;
}

export const readingConflict = (kept: Reading): ReadingConflict => Object.assign(new ReadingConflict(), { kept });

/** What became of a reading that was sent. */
export const RecordReadingResult = createUnionType({
  name: 'RecordReadingResult',
  types: () => [Reading, ReadingConflict] as const,
  resolveType: (value: object) => value.constructor as Type,
});
