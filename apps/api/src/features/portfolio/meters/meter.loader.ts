import { loadById } from '../../../platform/records/kept-rows.js';
import { MeterRow } from './meter.entity.js';

/** The meter of an id, retired ones too; whoever hands out the id answers for the scope. */
export const meterOfId = loadById(MeterRow);
