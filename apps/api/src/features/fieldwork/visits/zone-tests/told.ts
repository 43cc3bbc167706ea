import type { Measured } from '../../../portfolio/zones/measure-zone.service.js';
import type { ZoneTestRow } from './zone-test.entity.js';

/** What a test told, and what of it goes on the zone's record; null where it told too little. */
export interface Told {
  readonly columns: Partial<ZoneTestRow>;
  readonly measured: Measured | null;
}
