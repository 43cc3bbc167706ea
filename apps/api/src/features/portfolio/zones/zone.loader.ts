import { loadById } from '../../../platform/records/kept-rows.js';
import { ZoneRow } from './zone.entity.js';

/** The zone of an id, retired ones too; whoever hands out the id answers for the scope. */
export const zoneOfId = loadById(ZoneRow);
