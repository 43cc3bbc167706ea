import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { WeatherStationRow } from './weather-station.entity.js';

/** All SQL of weather stations. */
export const weatherStations = {
  /** Those in use, by name. */
  inUse(tx: OrganizationTransaction): Promise<WeatherStationRow[]> {
    return tx.of(WeatherStationRow).find({ where: { organizationId: tx.organizationId, retiredAt: IsNull() }, order: { name: 'ASC' } });
  },
};
