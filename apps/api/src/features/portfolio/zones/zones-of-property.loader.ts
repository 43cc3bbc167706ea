import { loadInUse } from '../../../platform/records/kept-rows.js';
import { ZoneRow } from './zone.entity.js';

/** The zones in use of a property. */
export const zonesOfProperty = loadInUse(ZoneRow, 'propertyId', { name: 'ASC' });
