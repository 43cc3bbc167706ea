import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck } from './file-check.js';
import type { Names } from '../drafts/names.js';
import { bothOrNeither } from './portfolio-checks.js';
import { referProperty } from '../drafts/refer.js';
import { keyPart, sameKeyCheck } from '../drafts/same-key.js';

/** Warns of a water supplier that no property names: most often a misspelt one. */
export function supplierCheck(row: DraftRow, names: Names): void {
  const supplier = row.text('waterSupplier');
  if (supplier !== null && !names.suppliers.has(supplier)) row.warn('SUPPLIER_CREATED', { column: 'water_supplier', found: supplier });
}

export function rulesCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('water_supplier', 'effective_from', 'rule');
  return (row) => {
    supplierCheck(row, names);
    const [from, until] = [row.text('effectiveFrom'), row.text('effectiveUntil')];
    if (row.values['effectiveFrom'] !== undefined) sameKey(row, [keyPart(row.text('waterSupplier')), from, keyPart(row.text('rule'))]);
    bothOrNeither(row, ['blockedFrom', 'blocked_from'], ['blockedUntil', 'blocked_until']);
    if (from !== null && until !== null && until < from)
      row.refuse('END_NOT_AFTER_START', { column: 'effective_until', found: until, expected: from });
  };
}

export function backflowCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'assembly');
  return (row) => {
    referProperty(row, names);
    sameKey(row, [keyPart(row.text('property')), keyPart(row.text('assembly'))]);
  };
}
