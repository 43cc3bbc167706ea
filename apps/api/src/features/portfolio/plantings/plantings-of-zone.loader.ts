import { loadInUse } from '../../../platform/records/kept-rows.js';
import { PlantingRow } from './planting.entity.js';

/** The plantings in use of a zone. */
export const plantingsOfZone = loadInUse(PlantingRow, 'zoneId', { species: 'ASC' });
