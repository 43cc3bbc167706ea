import type { ReportLine, ReportModel, ReportPage, ReportSection, ReportTable } from '@rillbook/showing/report/report-model.js';
import { inMarkup as text } from './in-markup.js';

/** What the page offers beside the report. */
export interface PageLinks {
  readonly style: string;
  readonly files: readonly { readonly href: string; readonly name: string }[];
}

const picture = (dataUrl: string, alt: string): string => `<img src="${text(dataUrl)}" alt="${text(alt)}">`;

function table({ title, heads, rows }: ReportTable, level: number): string {
  const head = heads.map((words, at) => `<th scope="col"${at ? ' class="num"' : ''}>${text(words)}</th>`).join('');
  const body = rows.map(({ label, cells }) => {
    const written = cells.map(
      ({ shown, reason }) => `<td class="num">${text(shown)}${reason ? `<small>${text(reason)}</small>` : ''}</td>`,
    );
    return `<tr><th scope="row">${text(label)}</th>${written.join('')}</tr>`;
  });
  return `<h${level}>${text(title)}</h${level}><div class="wide"><table><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>`;
}

function line({ says, photos }: ReportLine): string {
  const pictures = photos.map(
    ({ dataUrl, alt, takenOn }) => `<figure>${picture(dataUrl, alt)}<figcaption>${text(takenOn)}</figcaption></figure>`,
  );
  return `<li>${text(says)}${pictures.length ? `<div class="photos">${pictures.join('')}</div>` : ''}</li>`;
}

const section = ({ title, lines, none }: ReportSection, level: number): string =>
  `<section><h${level}>${text(title)}</h${level}>${lines.length ? `<ul>${lines.map(line).join('')}</ul>` : `<p class="soft">${text(none)}</p>`}</section>`;

function page(content: ReportPage, isOnly: boolean): string {
  const level = isOnly ? 2 : 3;
  const months = content.year.months.map(
    ({ label, drawn }) => `<figure>${drawn.svg || '–'}<figcaption>${text(label)}</figcaption></figure>`,
  );
  const { ordinance, method, quality } = content;
  const heading = (words: string): string => `<h${level}>${text(words)}</h${level}>`;
  return [
    `<article>${isOnly ? `<h1>${text(content.verdict)}</h1>` : `<h2>${text(content.verdict)}</h2>`}`,
    content.where ? `<p class="soft">${text(content.where)}</p>` : '',
    `<div class="gauge">${content.gauge.svg}</div>`,
    `${heading(content.year.title)}<div class="year">${months.join('')}</div>`,
    `<div class="two">${content.sections.map((each) => section(each, level)).join('')}</div>`,
    content.tables.map((each) => table(each, level)).join(''),
    ordinance ? `${heading(ordinance.title)}<p>${text(ordinance.says)}</p>${table(ordinance.table, level)}` : '',
    `${heading(method.title)}${method.paragraphs.map((each) => `<p>${text(each)}</p>`).join('')}`,
    `${heading(quality.title)}<ul>${quality.lines.map((each) => `<li>${text(each)}</li>`).join('')}</ul></article>`,
  ].join('');
}

/** The colour of the office as a line; a style in the page would be refused by its own policy. */
const rule = (colour: string | null): string =>
  `<svg class="rule" height="3" aria-hidden="true"><rect width="100%" height="3" fill="${text(colour ?? '#0b5c7a')}"/></svg>`;

/** The report as a page of its own, made from the same model as its PDF. */
export function reportHtml(model: ReportModel, { style, files }: PageLinks): string {
  const isOnly = model.pages.length === 1;
  const { brand, note } = model;
  const links = files.map(({ href, name }) => `<a href="${text(href)}">${text(name)}</a>`).join(' ');
  return [
    `<!doctype html><html lang="${model.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">`,
    `<title>${text(`${model.title} · ${model.client} · ${model.periodInWords}`)}</title><link rel="stylesheet" href="${text(style)}"></head><body><main>`,
    `<header><div>${brand.logo ? picture(brand.logo, brand.name) : `<b>${text(brand.name)}</b>`}</div><p class="soft">${text(model.title)} · ${text(model.periodInWords)}<br>${text(model.client)}${brand.contact ? `<br>${text(brand.contact)}` : ''}</p></header>`,
    rule(brand.colour),
    `<p class="files">${links}</p>`,
    isOnly ? '' : `<h1>${text(model.verdict)}</h1>${model.summary ? table(model.summary, 2) : ''}`,
    note ? `<aside><b>${text(note.title)}</b><p>${text(note.text)}</p></aside>` : '',
    model.pages.map((each) => page(each, isOnly)).join(''),
    `<footer class="soft">${text(model.footer)}</footer></main></body></html>`,
  ].join('\n');
}
