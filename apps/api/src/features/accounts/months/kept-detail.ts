import { type AccountDetail, detailOfColumns, isInColumns } from './packed-columns.js';
import { unpacked } from './packed-value.js';

/** An account's detail as it is kept, in whichever of its forms. */
export const keptDetail = (bytes: Buffer): AccountDetail =>
  isInColumns(bytes) ? detailOfColumns(bytes) : (unpacked(bytes) as AccountDetail);

/** The account of a month, as 'YYYY-MM', that was read with it. */
export function detailOf(packed: Buffer | null, month: string): AccountDetail {
  if (!packed) throw new TypeError(`the account of ${month} was not read with it`);
  return keptDetail(packed);
}
