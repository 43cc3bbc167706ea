import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck, GroupCheck } from './file-check.js';
import { keyOf } from '../drafts/key-table.js';
import type { Names } from '../drafts/names.js';
import { supplierCheck } from './rules-checks.js';
import { mustAgree } from './must-agree.js';
import { keyPart, sameKeyCheck } from '../drafts/same-key.js';

/** The tiers of one supplier and date are one rate schedule. */
export function ratesCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('water_supplier', 'effective_from', 'tier');
  return (row) => {
    supplierCheck(row, names);
    const [supplier, from] = [row.text('waterSupplier'), row.text('effectiveFrom')];
    if (supplier !== null && from !== null) row.group = keyOf(supplier, from);
    sameKey(row, [keyPart(supplier), keyPart(from), keyPart(row.number('tier'))]);
    if (row.values['upToIs'] !== undefined && row.blank('upToIs') && row.number('upTo') !== null) row.values['upToIs'] = 'volume';
  };
}

/** Tiers must reach further one after the other, only the last without end; what holds for the schedule stands alike on all of them. */
export function rateScheduleCheck(): GroupCheck {
  return (rows) => {
    const tiers = [...rows].sort((a, b) => (a.number('tier') ?? 0) - (b.number('tier') ?? 0));
    mustAgree(rows, 'fixed', 'fixed');
    mustAgree(rows, 'unit', 'unit');
    mustAgree(
      rows.filter((row) => row.number('upTo') !== null),
      'upToIs',
      'up_to_is',
    );
    tiers.forEach((row, at) => {
      const before = tiers[at - 1];
      if (before) furtherThan(row, before);
    });
  };
}

function furtherThan(row: DraftRow, before: DraftRow): void {
  const [upTo, reached] = [row.number('upTo'), before.number('upTo')];
  if (reached !== null && (upTo === null || upTo > reached)) return;
  row.refuse('TIERS_OUT_OF_ORDER', { column: 'up_to', found: row.found('tier'), expected: before.found('up_to'), otherLine: before.line });
}
