const TRIGGER = /^[=+\-@\t']/;
const NUMERIC = /^-?(?:\d+\.?\d*|\.\d+)$/;

/** A cell as it is exported: one that a spreadsheet would take for a formula, or that begins with an apostrophe, gets one more apostrophe. */
export function guarded(cell: string): string {
  return TRIGGER.test(cell) && !NUMERIC.test(cell) ? `'${cell}` : cell;
}

/** The reverse on import: exactly one leading apostrophe is removed. */
export function unguarded(cell: string): string {
  return cell.startsWith("'") ? cell.slice(1) : cell;
}

/** A line of a CSV file: commas, quotation marks where they are needed, one line feed. */
export function csvLine(cells: readonly string[]): string {
  const line = cells.map((cell) => quoted(guarded(cell))).join(',');
  // A row of one blank cell would be a blank line, which no reader counts as a row.
  return `${line === '' ? '""' : line}\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
