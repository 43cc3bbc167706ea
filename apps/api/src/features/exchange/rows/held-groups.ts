import type { DraftRow } from '../drafts/draft-row.js';
import { KeyTable } from '../drafts/key-table.js';
import type { GroupCheck } from '../checks/file-check.js';

/** How many lines of unfinished groups are held at once; a file whose groups lie further apart must be sorted. */
export const MOST_HELD = 50_000;

/** Holds lines back until all of their group have come, and gives them one verdict. */
export class HeldGroups {
  private readonly held = new Map<string, DraftRow[]>();
  private readonly scattered = new KeyTable();
  private heldLines = 0;

  /**
   * @param sizes how many lines each group has in the whole file
   */
  constructor(
    private readonly sizes: KeyTable,
    private readonly check: GroupCheck,
  ) {}

  /** Takes a line; gives back the lines that are ready: its whole group, the line alone where it has none, or none yet. */
  push(row: DraftRow): readonly DraftRow[] {
    if (row.group === null) return [row];
    if (this.scattered.get(row.group) > 0) return [refuseScattered(row)];
    const lines = this.held.get(row.group) ?? [];
    lines.push(row);
    this.held.set(row.group, lines);
    this.heldLines += 1;
    if (lines.length >= this.sizes.get(row.group)) return this.release(row.group, lines);
    return this.heldLines > MOST_HELD ? this.giveUpOldest() : [];
  }

  private release(group: string, lines: readonly DraftRow[]): readonly DraftRow[] {
    this.held.delete(group);
    this.heldLines -= lines.length;
    this.check(lines);
    const bad = lines.find((row) => row.rejected);
    if (bad) for (const row of lines) if (!row.rejected) row.refuse('GROUP_REJECTED', { expected: named(row), otherLine: bad.line });
    return lines;
  }

  private giveUpOldest(): readonly DraftRow[] {
    const oldest = this.held.entries().next();
    if (oldest.done) return [];
    const [group, lines] = oldest.value;
    this.held.delete(group);
    this.heldLines -= lines.length;
    this.scattered.set(group, 1);
    return lines.map(refuseScattered);
  }
}

function refuseScattered(row: DraftRow): DraftRow {
  row.refuse('GROUP_SCATTERED', { expected: named(row) });
  return row;
}

/** A group as the file names it: the controller and its instant, the supplier and its date. */
function named(row: DraftRow): string {
  const columns = row.file === 'settings' ? ['controller', 'effective_at'] : ['water_supplier', 'effective_from'];
  return columns.map((column) => row.found(column)).join(', ');
}
