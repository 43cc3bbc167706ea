/** The separators that are understood, the commonest first: it wins where nothing speaks for another. */
const SEPARATORS = [',', ';', '\t'] as const;

/** A separator between cells. */
export type Separator = (typeof SEPARATORS)[number];

/** How a text begins: its separator, and how much of it (a spreadsheet's `sep=;` line) is no row. */
export interface Beginning {
  readonly separator: Separator;
  /** A first line that only names the separator. */
  readonly declared: boolean;
}

const DECLARATION = /^\s*"?sep=([,;\t])"?[ ]*(?:\r\n|\r|\n|$)/i;

/**
 * Chooses the separator by the header line: the one that yields the most names of columns, then the most cells.
 *
 * @param text the beginning of the text, at least its first line
 * @param knows whether a header names a column
 */
export function sniffSeparator(text: string, knows: (header: string) => boolean): Beginning {
  const declared = DECLARATION.exec(text);
  if (declared?.[1]) return { separator: declared[1] as Separator, declared: true };
  const header = firstRow(text);
  let best: { separator: Separator; score: number } = { separator: ',', score: -1 };
  for (const separator of SEPARATORS) {
    const cells = split(header, separator);
    const score = cells.filter(knows).length * 1000 + Math.min(cells.length, 999);
    if (score > best.score) best = { separator, score };
  }
  return { separator: best.separator, declared: false };
}

/** The first row that is not blank, with any line breaks inside quotation marks. */
function firstRow(text: string): string {
  let quoted = false;
  let begin = 0;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (character === '"') quoted = !quoted;
    else if (!quoted && (character === '\n' || character === '\r')) {
      if (text.slice(begin, at).replace(/[,;\t\s]/g, '') !== '') return text.slice(begin, at);
      begin = at + 1;
    }
  }
  return text.slice(begin);
}

function split(row: string, separator: Separator): string[] {
  const cells: string[] = [];
  let quoted = false;
  let begin = 0;
  for (let at = 0; at <= row.length; at += 1) {
    if (row[at] === '"') quoted = !quoted;
    if (at < row.length && (quoted || row[at] !== separator)) continue;
    cells.push(row.slice(begin, at).trim().replace(/^"|"$/g, ''));
    begin = at + 1;
  }
  return cells;
}
