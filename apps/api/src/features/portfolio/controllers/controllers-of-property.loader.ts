import { loadInUse } from '../../../platform/records/kept-rows.js';
import { ControllerRow } from './controller.entity.js';

/** The controllers in use of a property. */
export const controllersOfProperty = loadInUse(ControllerRow, 'propertyId', { name: 'ASC' });
