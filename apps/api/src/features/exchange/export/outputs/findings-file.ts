import { offsetText, wallText } from '../../columns/time-cells.js';
import { wallOf } from '../../drafts/zone-clock.js';
import { csvLine } from '../../rows/csv-cell.js';
import type { Cursor } from '../cursor.repository.js';
import { findingSays } from './finding-says.js';
import type { FindingAnswer } from './findings.repository.js';
import { plainGallons, plainNumber } from './plain-numbers.js';

const COLUMNS = [
  'property',
  'meter',
  'controller',
  'zone',
  'kind',
  'from',
  'until',
  'gallons',
  'money',
  'confidence',
  'state',
  'opened_at',
  'says',
];
const AT_ONCE = 500;
const MONEY_DECIMALS = 2;
const CONFIDENCE_DECIMALS = 4;
const MS_PER_MINUTE = 60_000;

/** findings.csv: several zones of one finding stand in one cell, separated by semicolons. */
export async function* findingsFile(cursor: Cursor<FindingAnswer>): AsyncGenerator<string> {
  yield csvLine(COLUMNS);
  for await (const finding of cursor.rows(AT_ONCE)) {
    yield csvLine([
      finding.property,
      finding.meter ?? '',
      finding.controller ?? '',
      (finding.zones ?? []).join('; '),
      finding.kind,
      finding.from ?? '',
      finding.until ?? '',
      plainGallons(finding.litres),
      plainNumber(finding.money, MONEY_DECIMALS),
      plainNumber(finding.confidence, CONFIDENCE_DECIMALS),
      finding.state,
      localText(finding.openedAt, finding.timeZone),
      findingSays(finding),
    ]);
  }
}

/** The property's local time, to the second, with its offset from UTC. */
function localText(instant: Date, zone: string): string {
  const { wallMs, offsetMs } = wallOf(zone, Math.floor(instant.getTime() / 1000) * 1000);
  return wallText(wallMs) + offsetText(offsetMs / MS_PER_MINUTE);
}
