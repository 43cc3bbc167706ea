import { loadInUse } from '../../../../platform/records/kept-rows.js';
import { WateringRuleRow } from './watering-rule.entity.js';

/** The watering rules in use of a supplier. */
export const wateringRulesOfSupplier = loadInUse(WateringRuleRow, 'supplierId', { name: 'ASC', effectiveFrom: 'ASC' });
