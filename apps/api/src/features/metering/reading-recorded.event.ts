import type { ReadingRow } from './readings/reading.entity.js';
import type { JudgedRegister } from '@rillbook/metering/intervals/register-history.js';
import type { KeptMeter } from './require-meter.js';

/** A reading was kept for the first time; told in the same transaction. */
export class ReadingRecorded {
  constructor(
    readonly reading: ReadingRow,
    readonly meter: KeptMeter,
    /** beside the readings before it */
    readonly judged: JudgedRegister,
  ) {}
}
