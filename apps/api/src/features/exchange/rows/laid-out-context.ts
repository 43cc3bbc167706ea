import { keyOf, KeyTable } from '../drafts/key-table.js';
import type { DraftRow } from '../drafts/draft-row.js';
import type { LaidOutRows } from '../drafts/laid-out-file.js';
import type { Names } from '../drafts/names.js';

/** What the files of layouts of their own share within one import. */
export class LaidOutContext {
  private readonly places = new Map<string, number>();
  private readonly days = new KeyTable();
  private readonly fileNames: string[] = [];

  constructor(readonly names: Names) {}

  /** A name for the refused rows of each file: that of the import's own file is without a number. */
  nextPlace(file: LaidOutRows['file']): string {
    const number = (this.places.get(file) ?? 1) + 1;
    this.places.set(file, number);
    return `${file}-${number}`;
  }

  /** Tells of days of one station that stand in several files: the later file counts. */
  noteDay(row: DraftRow): void {
    const [station, day] = [row.text('station'), row.text('day')];
    if (row.rejected || station === null || day === null) return;
    const key = keyOf(station, day);
    const before = this.fileNames[this.days.get(key) - 1];
    if (before !== undefined && before !== row.fileName) row.warn('DAY_IN_TWO_FILES', { column: 'date', found: day, expected: before });
    if (this.fileNames.at(-1) !== row.fileName) this.fileNames.push(row.fileName);
    this.days.set(key, this.fileNames.length);
  }
}
