import { ClientRow } from './features/portfolio/clients/client.entity.js';
import { PropertyRow } from './features/portfolio/properties/property.entity.js';
import { BackgroundJobRow } from './platform/jobs/background-job.entity.js';
import { ChangeRow } from './platform/records/change.entity.js';

/** Every row class of the product. A test holds them against the database. */
export const entities = [BackgroundJobRow, ChangeRow, ClientRow, PropertyRow];
