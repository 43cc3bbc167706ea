import { csvLine } from '../../rows/csv-cell.js';
import type { Cursor } from '../cursor.repository.js';
import type { AccountAnswer } from './accounts.repository.js';
import { plainGallons } from './plain-numbers.js';

const COLUMNS = [
  'property',
  'meter',
  'month',
  'allowed_gal',
  'needed_gal',
  'programmed_gal',
  'metered_gal',
  'allowed_sd_gal',
  'needed_sd_gal',
  'programmed_sd_gal',
  'metered_sd_gal',
];
const AT_ONCE = 2000;

/** accounts.csv: a row for each property and month, and one for each meter where a property has several. */
export async function* accountsFile(cursor: Cursor<AccountAnswer>): AsyncGenerator<string> {
  yield csvLine(COLUMNS);
  for await (const { property, meter, month, ...volumes } of cursor.rows(AT_ONCE)) {
    const { allowed, needed, programmed, metered, allowedSd, neededSd, programmedSd, meteredSd } = volumes;
    const litres = [allowed, needed, programmed, metered, allowedSd, neededSd, programmedSd, meteredSd];
    yield csvLine([property, meter ?? '', month, ...litres.map(plainGallons)]);
  }
}
