import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { WritableRow } from '../../rows/write-rows.js';
import type { Answer } from './question.js';

interface Day {
  readonly timeZone: string;
  readonly property: string;
  readonly meter: string;
  readonly dayStart: Date;
  readonly startSeconds: readonly number[];
  readonly lengthSeconds: readonly number[];
  readonly volumes: readonly number[];
  readonly unit: VolumeUnit;
}

const MS_PER_SECOND = 1000;

/** The intervals of one day of a meter's feed. */
export function usageOf(answer: Answer): readonly WritableRow<'usage'>[] {
  const { timeZone, property, meter, dayStart, startSeconds, lengthSeconds, volumes, unit } = answer as unknown as Day;
  return startSeconds.map((seconds, at) => {
    const start = dayStart.getTime() + seconds * MS_PER_SECOND;
    const end = start + lengthSeconds[at]! * MS_PER_SECOND;
    return { values: { property, meter, start, end, volume: volumes[at]!, unit }, typed: {}, timeZone };
  });
}
