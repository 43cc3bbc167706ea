import { loadById } from '../../../platform/records/kept-rows.js';
import { WaterSupplierRow } from './water-supplier.entity.js';

/** The water supplier of an id, retired ones too. */
export const waterSupplierOfId = loadById(WaterSupplierRow);
