// Reads the figures of a report back out of each of its outputs, by other ways than those that wrote them.
import { strFromU8, unzipSync } from 'fflate';
import { withoutSpace } from './pdf-text.mjs';

/** The cells of a CSV (RFC 4180). */
function cellsOf(csv) {
  const rows = [[]];
  let [cell, isQuoted] = ['', false];
  const end = () => {
    rows.at(-1).push(cell);
    cell = '';
  };
  for (let at = csv.charCodeAt(0) === 0xfeff ? 1 : 0; at < csv.length; at += 1) {
    const sign = csv[at];
    if (isQuoted && sign === '"' && csv[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (sign === '"') isQuoted = !isQuoted;
    else if (isQuoted || (sign !== ',' && sign !== '\r' && sign !== '\n')) cell += sign;
    else if (sign === ',') end();
    else if (sign === '\n') {
      end();
      rows.push([]);
    }
  }
  return rows.filter((row) => row.length > 1);
}

const ENTITIES = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };
const read = (markup) => markup.replace(/&(lt|gt|amp|quot|#39);/g, (_, name) => ENTITIES[name]);

/** The cells of the first sheet of a workbook, as text; an empty cell is ''. */
function sheetOf(xlsx) {
  const sheet = strFromU8(unzipSync(new Uint8Array(xlsx))['xl/worksheets/sheet1.xml']);
  return [...sheet.matchAll(/<row [^>]*>(.*?)<\/row>/gs)].map(([, row]) => {
    const cells = Array.from({ length: 8 }, () => '');
    for (const [, column, inner] of row.matchAll(/<c r="([A-H])\d+"[^>]*>(.*?)<\/c>/gs))
      cells[column.charCodeAt(0) - 65] = read(/<(?:v|t)(?: [^>]*)?>(.*?)<\/(?:v|t)>/s.exec(inner)?.[1] ?? '');
    return cells;
  });
}

// A text that a spreadsheet would take for a formula stands behind an apostrophe in the CSV.
const unguarded = (text) => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

const figureOf = ([property, section, id, label, value, unit, shown, reason]) => ({
  property,
  section,
  id,
  label: unguarded(label),
  value: value === '' ? null : Number(value),
  unit,
  shown: unguarded(shown),
  reason: reason === '' ? null : unguarded(reason),
});

/** The figures of a report's CSV. */
export const figuresOfCsv = (csv) => cellsOf(csv).slice(1).map(figureOf);
/** The figures of a report's workbook. */
export const figuresOfXlsx = (xlsx) => sheetOf(xlsx).slice(1).map(figureOf);

/**
 * What of a report's model its PDF does not say: each row of a table as its label and its numbers, one after the other, and each sentence.
 *
 * @returns the rows and sentences that are not there
 */
export function missingInPdf(model, text) {
  const rowsOf = ({ rows }) => rows.map(({ label, cells }) => [label, ...cells.map(({ shown }) => shown)].join(''));
  const linesOf = (sections) => sections.flatMap(({ lines }) => lines.map(({ says }) => says));
  const said = [
    model.verdict,
    ...(model.all ? [model.all.why, ...rowsOf(model.all.table), ...linesOf(model.all.sections)] : []),
    ...model.pages.flatMap(({ verdict, why, tables, ordinance, sections }) => [
      verdict,
      why,
      ...[...tables, ...(ordinance?.tables ?? [])].flatMap(rowsOf),
      ...linesOf(sections),
    ]),
  ];
  return said.filter((words) => words && !text.includes(withoutSpace(words)));
}

/** What sets two lists of figures apart; nothing where they are the same. */
export function apart(name, found, wanted) {
  if (found.length !== wanted.length) return [`${name} has ${found.length} figures, not ${wanted.length}`];
  const as = (one) => JSON.stringify(one, Object.keys(one).sort());
  return found.flatMap((one, at) => (as(one) === as(wanted[at]) ? [] : [`${name}: ${as(one)} is not ${as(wanted[at])}`]));
}
