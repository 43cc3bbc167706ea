import { loadInUse } from '../../../../platform/records/kept-rows.js';
import { RateTierRow } from './rate-tier.entity.js';

/** The rate tiers in use of a supplier, the newest schedule first, its lowest tier first. */
export const rateTiersOfSupplier = loadInUse(RateTierRow, 'supplierId', { effectiveFrom: 'DESC', tier: 'ASC' });
