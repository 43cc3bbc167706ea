import { loadInUse } from '../../../platform/records/kept-rows.js';
import { MeterRow } from './meter.entity.js';

/** The meters in use of a property. */
export const metersOfProperty = loadInUse(MeterRow, 'propertyId', { name: 'ASC' });
