import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { stationsFilledFrom } from '../../../weather/series/stations-filled-from.service.js';
import { touchedProperties } from './touched.repository.js';

/** What an import has changed, as far as month accounts are computed from it. */
export class Touched {
  readonly properties = new Set<string>();
  readonly stations = new Set<string>();
  readonly suppliers = new Set<string>();

  /** The properties whose accounts no longer stand. */
  async propertyIds(tx: OrganizationTransaction): Promise<string[]> {
    if (this.properties.size + this.stations.size + this.suppliers.size === 0) return [];
    return touchedProperties(tx, [...this.properties], await stationsFilledFrom(tx, [...this.stations]), [...this.suppliers]);
  }
}
