import type {
  Drawn,
  ReportLine,
  ReportMethod,
  ReportModel,
  ReportOfAll,
  ReportPage,
  ReportSection,
  ReportTable,
  YearOfGauges,
} from '@rillbook/showing/report/report-model.js';
import { type AskedBefore, askForm } from './ask-form.js';
import { inLines, inMarkup as text } from './in-markup.js';

/** What the page offers beside the report. */
export interface PageLinks {
  readonly style: string;
  /** where a question goes */
  readonly ask: string;
  /** what was asked by the same link */
  readonly asked: readonly AskedBefore[];
  readonly files: readonly { readonly href: string; readonly name: string }[];
}

const picture = (dataUrl: string, alt: string): string => `<img src="${text(dataUrl)}" alt="${text(alt)}">`;

function table({ title, heads, rows, notes }: ReportTable, level: number): string {
  const head = heads.map((words, at) => `<th scope="col"${at ? ' class="num"' : ''}>${text(words)}</th>`).join('');
  const body = rows.map(({ label, cells, isTotal }) => {
    const written = cells.map(({ shown }) => `<td class="num">${text(shown)}</td>`);
    return `<tr${isTotal ? ' class="total"' : ''}><th scope="row">${text(label)}</th>${written.join('')}</tr>`;
  });
  const reasons = notes.map((note) => `<small>${text(note)}</small>`).join('');
  return `<h${level}>${text(title)}</h${level}><div class="wide" tabindex="0" role="group" aria-label="${text(title)}"><table${heads.length === 2 ? ' class="list"' : ''}><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>${reasons}`;
}

function line({ says, photos }: ReportLine): string {
  const pictures = photos.map(
    ({ dataUrl, alt, takenOn }) => `<figure>${picture(dataUrl, alt)}<figcaption>${text(takenOn)}</figcaption></figure>`,
  );
  return `<li>${text(says)}${pictures.length ? `<div class="photos">${pictures.join('')}</div>` : ''}</li>`;
}

const section = ({ title, lines, none }: ReportSection, level: number): string =>
  `<section><h${level}>${text(title)}</h${level}>${lines.length ? `<ul>${lines.map(line).join('')}</ul>` : `<p class="soft">${text(none)}</p>`}</section>`;

function year({ title, scale, months }: YearOfGauges, level: number): string {
  const figures = months.map(({ label, drawn }) => `<figure>${drawn.svg || '–'}<figcaption>${text(label)}</figcaption></figure>`);
  return `<h${level}>${text(title)}</h${level}><div class="year">${figures.join('')}</div><p class="soft">${text(scale)}</p>`;
}

/** A drawing that keeps the size at which its words can be read: where it is wider than the screen, it is moved by hand or key. */
const gaugeOf = ({ svg, phoneSvg = '' }: Drawn, name: string): string =>
  `<div class="gauge" tabindex="0" role="group" aria-label="${text(name)}">${svg}${phoneSvg}</div>`;

/** All properties of a client together. */
/** What the office wrote, where the PDF has it too: above what was counted. */
const noteOf = (note: ReportModel['note']): string => (note ? `<aside><b>${text(note.title)}</b><p>${text(note.text)}</p></aside>` : '');

function allOf({ verdict, note }: ReportModel, all: ReportOfAll): string {
  return [
    `<h1>${text(verdict)}</h1>`,
    all.why ? `<p class="lede">${text(all.why)}</p>` : '',
    noteOf(note),
    all.gauge ? gaugeOf(all.gauge, all.table.title) : '',
    table(all.table, 2),
    all.year ? year(all.year, 2) : '',
    `<div class="two">${all.sections.map((each) => section(each, 2)).join('')}</div>`,
  ].join('');
}

const methodOf = ({ title, paragraphs }: ReportMethod, level: number): string =>
  paragraphs.length ? `<h${level}>${text(title)}</h${level}>${paragraphs.map((each) => `<p>${text(each)}</p>`).join('')}` : '';

function page(content: ReportPage, isOnly: boolean): string {
  const level = isOnly ? 2 : 3;
  const { ordinance, method, quality } = content;
  const heading = (words: string): string => `<h${level}>${text(words)}</h${level}>`;
  return [
    `<article>${isOnly ? `<h1>${text(content.verdict)}</h1>` : `<h2>${text(content.verdict)}</h2>`}`,
    content.why ? `<p class="lede">${text(content.why)}</p>` : '',
    content.where ? `<p class="soft">${text(content.where)}</p>` : '',
    gaugeOf(content.gauge, content.name),
    year(content.year, level),
    `<div class="two">${content.sections.map((each) => section(each, level)).join('')}</div>`,
    content.tables.map((each) => table(each, level)).join(''),
    ordinance
      ? `${heading(ordinance.title)}<p>${text(ordinance.says)}</p>${ordinance.tables.map((each) => table(each, level + 1)).join('')}`
      : '',
    methodOf(method, level),
    `${heading(quality.title)}<ul>${quality.lines.map((each) => `<li>${text(each)}</li>`).join('')}</ul></article>`,
  ].join('');
}

/** The colour of the office as a line; a style in the page would be refused by its own policy. */
const rule = (colour: string | null): string =>
  `<svg class="rule" height="3" aria-hidden="true"><rect width="100%" height="3" fill="${text(colour ?? '#0b5c7a')}"/></svg>`;

/** The report as a page of its own, made from the same model as its PDF. */
export function reportHtml(model: ReportModel, { style, files, ask, asked }: PageLinks): string {
  const isOnly = model.pages.length === 1;
  const { brand } = model;
  const links = files.map(({ href, name }) => `<a href="${text(href)}">${text(name)}</a>`).join(' ');
  return [
    `<!doctype html><html lang="${model.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">`,
    `<title>${text(`${model.title} · ${model.client} · ${model.periodInWords}`)}</title><link rel="stylesheet" href="${text(style)}"></head><body><main>`,
    `<header><div>${brand.logo ? picture(brand.logo, brand.name) : `<b>${text(brand.name)}</b>`}</div><p class="soft">${text(model.title)} · ${text(model.periodInWords)}<br>${text(model.client)}${brand.contact ? `<br>${inLines(brand.contact)}` : ''}</p></header>`,
    rule(brand.colour),
    `<p class="files">${links}</p>`,
    model.all ? allOf(model, model.all) : noteOf(model.note),
    model.pages.map((each) => page(each, isOnly)).join(''),
    methodOf(model.method, 2),
    askForm(model.language, ask, asked),
    `<footer class="soft">${text(model.footer)}</footer></main></body></html>`,
  ].join('\n');
}
