import type { FileName } from '../columns/import-files.js';
import type { RawRecord } from '../files/table-file.js';
import { type Problem, type ProblemCode, type ProblemParts, problemAt } from '../problems/problem.js';

/** A row on its way from cells to a verdict: what could be read of it, and what is wrong so far. */
export class DraftRow {
  /** Values by field; a field whose cell could not be read is not there, a blank one is null. */
  readonly values: Record<string, unknown> = {};
  /** The cells of known columns that are not blank, as they were typed. */
  readonly typed: Record<string, string> = {};
  readonly problems: Problem[] = [];
  readonly warnings: Problem[] = [];
  /** The lines that stand or fall together with this one share a key. */
  group: string | null = null;
  /** The lines of the file that make this row, where they are several: an hourly file has many to a day. */
  lines: readonly RawRecord[] = [];
  /** What stands in the file for a column of the import, where the file has a layout of its own: its heading, and the cell. */
  readonly headings = new Map<string, string>();
  readonly shown: Record<string, string> = {};

  /**
   * @param fileName the file as the office named it
   * @param given the columns that the file has
   */
  constructor(
    readonly fileName: string,
    readonly file: FileName,
    readonly line: number,
    readonly cells: readonly string[],
    readonly given: ReadonlySet<string>,
  ) {}

  get rejected(): boolean {
    return this.problems.length > 0;
  }

  refuse(code: ProblemCode, parts: ProblemParts = {}): void {
    this.problems.push(this.problem(code, parts));
  }

  warn(code: ProblemCode, parts: ProblemParts = {}): void {
    this.warnings.push(this.problem(code, parts));
  }

  private problem(code: ProblemCode, parts: ProblemParts): Problem {
    const column = parts.column == null ? null : (this.headings.get(parts.column) ?? parts.column);
    return problemAt({ file: this.fileName, line: this.line }, code, { ...parts, column });
  }

  /** A text field; null where it is blank or could not be read. */
  text(field: string): string | null {
    const value = this.values[field];
    return typeof value === 'string' ? value : null;
  }

  /** A number field; null where it is blank or could not be read. */
  number(field: string): number | null {
    const value = this.values[field];
    return typeof value === 'number' ? value : null;
  }

  /** Whether the cell was read and is blank. */
  blank(field: string): boolean {
    return this.values[field] === null;
  }

  /** What was typed into a column, for a sentence. */
  found(column: string): string {
    return this.typed[column] ?? this.shown[column] ?? '';
  }
}
