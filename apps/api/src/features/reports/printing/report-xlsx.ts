import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { strToU8, zipSync } from 'fflate';
import { FIGURE_HEADS, figuresOf } from './figures-of-report.js';
import { inMarkup } from './in-markup.js';

const WIDTHS = [26, 26, 26, 34, 14, 8, 14, 40];
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const BOLD = 1;
const MOST_OF_NAME = 31;

/** A text is written as text: nothing in it is a formula. A number is a number. */
function cell(value: string | number | null, column: number, row: number, style = 0): string {
  const at = `${String.fromCharCode(65 + column)}${row}`;
  if (value === null || value === '') return '';
  const styled = style ? ` s="${style}"` : '';
  if (typeof value === 'number') return `<c r="${at}"${styled}><v>${value}</v></c>`;
  return `<c r="${at}"${styled} t="inlineStr"><is><t xml:space="preserve">${inMarkup(value)}</t></is></c>`;
}

function sheet(heads: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const lines = [heads, ...rows].map((cells, at) => {
    const written = cells.map((value, column) => cell(value, column, at + 1, at === 0 ? BOLD : 0)).join('');
    return `<row r="${at + 1}">${written}</row>`;
  });
  const columns = WIDTHS.map((width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`).join('');
  const frozen =
    '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>';
  return `${XML}<worksheet xmlns="${MAIN}">${frozen}<cols>${columns}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`;
}

const STYLES = `${XML}<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf xfId="0"/><xf xfId="0" fontId="1" applyFont="1"/></cellXfs></styleSheet>`;

/** A sheet's name has 31 letters at most: a period in words that is longer is told by its months. */
function nameOfSheet({ periodInWords, period }: ReportModel): string {
  return periodInWords.length <= MOST_OF_NAME ? periodInWords : `${period.from} – ${period.until}`;
}

/** The figures of a report as a workbook of one sheet: the numbers are those that are shown. */
export function reportXlsx(model: ReportModel): Buffer {
  const rows = figuresOf(model).map(({ property, section, figure: { id, label, value, unit, shown, reason } }) => [
    property,
    section,
    id,
    label,
    value,
    unit,
    shown,
    reason,
  ]);
  const part = (name: string, kind: string): string => `<Override PartName="${name}" ContentType="${TYPE}.${kind}+xml"/>`;
  const relation = (id: number, kind: string, target: string): string =>
    `<Relationship Id="rId${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
  const relations = (inner: string): string => `${XML}<Relationships xmlns="${PACKAGE}/relationships">${inner}</Relationships>`;
  const files = {
    '[Content_Types].xml': `${XML}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${part('/xl/workbook.xml', 'sheet.main')}${part('/xl/worksheets/sheet1.xml', 'worksheet')}${part('/xl/styles.xml', 'styles')}</Types>`,
    '_rels/.rels': relations(relation(1, 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': `${XML}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="${inMarkup(nameOfSheet(model))}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relations(relation(1, 'worksheet', 'worksheets/sheet1.xml') + relation(2, 'styles', 'styles.xml')),
    'xl/styles.xml': STYLES,
    'xl/worksheets/sheet1.xml': sheet(FIGURE_HEADS[model.language], rows),
  };
  return Buffer.from(zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])), { level: 6 }));
}
