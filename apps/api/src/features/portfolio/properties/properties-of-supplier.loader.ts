import { loadInUse } from '../../../platform/records/kept-rows.js';
import { PropertyRow } from './property.entity.js';

/** The properties in use that a supplier waters. */
export const propertiesOfSupplier = loadInUse(PropertyRow, 'waterSupplierId', { name: 'ASC', id: 'ASC' });
