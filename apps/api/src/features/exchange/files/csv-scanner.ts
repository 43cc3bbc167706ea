import { FileRefusal, type RawRecord } from './table-file.js';

/** The longest row that is read, in characters: longer ones are a missing quotation mark. */
export const LONGEST_ROW = 1_048_576;
/** The most columns that a row may have. */
export const MOST_COLUMNS = 200;

const QUOTE = 34;
const LF = 10;
const CR = 13;

/**
 * Reads delimited text as it arrives, a run of characters at a time. Rows end in LF, CR or CRLF; a cell may be quoted,
 * with doubled quotation marks inside; a quotation mark within an unquoted cell is itself. Blank rows are passed over.
 */
export class CsvScanner {
  private readonly separator: number;
  private state: 'plain' | 'quoted' | 'closed' = 'plain';
  private cell = '';
  private cells: string[] = [];
  private rowLength = 0;
  private line = 1;
  private rowLine = 1;
  private quoteLine = 1;
  private afterReturn = false;
  private ready: RawRecord[] = [];

  constructor(separator: string) {
    this.separator = separator.charCodeAt(0);
  }

  /** Takes the next piece of text and gives back the rows that it completed. */
  push(text: string): readonly RawRecord[] {
    let at = 0;
    while (at < text.length) {
      if (this.state === 'plain') at = this.plain(text, at);
      else if (this.state === 'quoted') at = this.quoted(text, at);
      else at = this.closed(text, at);
    }
    return this.take();
  }

  /** Ends the text: the last row needs no line break. */
  end(): readonly RawRecord[] {
    if (this.state === 'quoted') throw new FileRefusal('QUOTE_NOT_CLOSED', { line: this.quoteLine });
    if (this.cell !== '' || this.cells.length > 0) this.endRow();
    return this.take();
  }

  private take(): readonly RawRecord[] {
    const rows = this.ready;
    this.ready = [];
    return rows;
  }

  private plain(text: string, from: number): number {
    let at = from;
    while (at < text.length) {
      const code = text.charCodeAt(at);
      if (code === this.separator || code === LF || code === CR) break;
      if (code === QUOTE && this.opensQuote(text, from, at)) return at + 1;
      at += 1;
    }
    if (at > from) this.afterReturn = false;
    this.append(text, from, at);
    return at < text.length ? this.boundary(text.charCodeAt(at), at) : at;
  }

  /** A quotation mark opens a quoted cell only where nothing but spaces stands before it. */
  private opensQuote(text: string, from: number, at: number): boolean {
    if (this.cell.trim() !== '' || text.slice(from, at).trim() !== '') return false;
    this.cell = '';
    this.state = 'quoted';
    this.quoteLine = this.line;
    this.afterReturn = false;
    return true;
  }

  private quoted(text: string, from: number): number {
    const close = text.indexOf('"', from);
    const until = close < 0 ? text.length : close;
    this.countLines(text, from, until);
    this.append(text, from, until);
    if (close < 0) return until;
    this.state = 'closed';
    this.afterReturn = false;
    return close + 1;
  }

  private closed(text: string, at: number): number {
    const code = text.charCodeAt(at);
    if (code === QUOTE) {
      this.append('"', 0, 1);
      this.state = 'quoted';
      this.afterReturn = false;
      return at + 1;
    }
    if (code === this.separator || code === LF || code === CR) {
      this.state = 'plain';
      return this.boundary(code, at);
    }
    if (code === 32 || code === 9) return at + 1;
    throw new FileRefusal('STRAY_QUOTE', { line: this.quoteLine, found: text.slice(at, at + 20) });
  }

  private boundary(code: number, at: number): number {
    if (code === this.separator) this.endCell();
    else this.lineBreak(code);
    return at + 1;
  }

  private lineBreak(code: number): void {
    const secondHalf = code === LF && this.afterReturn && this.cells.length === 0 && this.cell === '';
    this.afterReturn = code === CR;
    if (secondHalf) {
      this.rowLine = this.line;
      return;
    }
    this.line += 1;
    this.endRow();
  }

  private countLines(text: string, from: number, until: number): void {
    for (let at = from; at < until; at += 1) {
      const code = text.charCodeAt(at);
      if (code === CR || (code === LF && !this.afterReturn)) this.line += 1;
      this.afterReturn = code === CR;
    }
  }

  private append(text: string, from: number, until: number): void {
    this.rowLength += until - from;
    if (this.rowLength > LONGEST_ROW) throw new FileRefusal('LINE_TOO_LONG', { line: this.rowLine, expected: String(LONGEST_ROW) });
    this.cell += text.slice(from, until);
  }

  private endCell(): void {
    this.cells.push(this.cell);
    this.cell = '';
    this.rowLength += 1;
    this.afterReturn = false;
    if (this.cells.length >= MOST_COLUMNS)
      throw new FileRefusal('TOO_MANY_COLUMNS', { line: this.rowLine, expected: String(MOST_COLUMNS) });
  }

  private endRow(): void {
    this.cells.push(this.cell);
    if (this.cells.some((cell) => cell.trim() !== '')) this.ready.push({ line: this.rowLine, cells: this.cells });
    this.cells = [];
    this.cell = '';
    this.rowLength = 0;
    this.rowLine = this.line;
  }
}
