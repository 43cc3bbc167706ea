import { type BillToMerge, mergeBills as merge } from '../../../metering/bills/merge-bills.service.js';
import type { FileMerge } from '../directory/file-merge.js';
import { isWhole, typedOver, valueOver } from './over-stored.js';
import { meterIdOf, touchMeters } from './places.js';
import { storedFacts } from './stored-facts.repository.js';

/** bills.csv */
export const mergeBills: FileMerge<'bills'> = async (to, { columns, rows }) => {
  const told = rows.map(({ values, typed }): BillToMerge => {
    const { startOn, endOn, volume, volumeUnit, amount } = values;
    return { meterId: meterIdOf(to, values), startOn, endOn, volume, unit: volumeUnit, amount, typed };
  });
  const merged = await merge(to.tx, isWhole('bills', columns) ? told : await overStored(told));
  if (merged.created + merged.changed) touchMeters(to, told);
  return merged;

  async function overStored(bills: readonly BillToMerge[]): Promise<BillToMerge[]> {
    const before = await storedFacts.amounts(
      to.tx,
      bills.map(({ meterId, startOn }) => ({ owner: meterId, key: startOn })),
    );
    return bills.map((bill, at) => ({
      ...bill,
      amount: valueOver(before[at] ?? null, bill.amount, columns.has('amount')),
      typed: typedOver(before[at] ?? null, bill.typed, columns),
    }));
  }
};
