import type { ChangeRow } from './change.entity.js';
import type { KeptRow } from './kept-row.js';

/** A kept thing was created, changed or retired. */
export class RecordChanged {
  constructor(
    /** the table's name, such as 'zone' */
    readonly thing: string,
    readonly row: KeptRow,
    readonly deed: ChangeRow['deed'],
  ) {}
}
