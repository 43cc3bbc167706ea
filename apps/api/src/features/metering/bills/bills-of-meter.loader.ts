import { defineLoader } from '../../../platform/graphql/loader.js';
import type { BillRow } from './bill.entity.js';
import { bills } from './bill.repository.js';

/** A meter's bills, the newest first. */
export const billsOfMeter = defineLoader<string, BillRow[]>((tx, ids) => bills.ofMeters(tx, ids), []);
