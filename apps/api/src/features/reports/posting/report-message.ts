import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { inLines, inMarkup } from '../printing/in-markup.js';

/** A mail, ready to be handed over. */
export interface ReportMessage {
  readonly messageId: string;
  readonly from: { readonly name: string; readonly address: string };
  readonly to: string;
  /** the office's own address, where its contact names one */
  readonly replyTo: string | null;
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly list: { readonly unsubscribe: string } | null;
  readonly attachments: readonly { readonly filename: string; readonly content: Buffer; readonly contentType: string }[];
}

const WORDS = {
  en: { attached: 'The report is attached.', stop: 'No more of these reports', file: 'water-report' },
  es: { attached: 'El informe va adjunto.', stop: 'No recibir más estos informes', file: 'informe-de-agua' },
} as const;

const told = (model: ReportModel): string[] => [
  ...(model.note ? [model.note.text] : []),
  ...(model.pages.length > 1 ? model.pages.map(({ verdict }) => verdict) : []),
  ...model.pages.flatMap(({ sections }) =>
    sections.filter(({ id }) => id === 'saved').flatMap(({ lines }) => lines.slice(0, 1).map(({ says }) => says)),
  ),
];

interface Addressed {
  readonly mailId: string;
  readonly to: string;
  readonly from: string;
  /** where the recipient can say that they want no more; null where the product's address is not known */
  readonly stopUrl: string | null;
}

/** The mail of a report: its sentences as text and as HTML, its PDF attached. The same mail has the same Message-ID whenever it is tried. */
export function reportMessage(model: ReportModel, pdf: Buffer, { mailId, to, from, stopUrl }: Addressed): ReportMessage {
  const words = WORDS[model.language];
  const paragraphs = [model.verdict, ...told(model), words.attached];
  const stop = stopUrl
    ? { text: `\n\n${words.stop}: ${stopUrl}`, html: `<p><a href="${inMarkup(stopUrl)}">${words.stop}</a></p>` }
    : { text: '', html: '' };
  const by = [model.brand.name, model.brand.contact].filter((line) => line !== null);
  return {
    messageId: `<${mailId}@${domainOf(from)}>`,
    from: { name: model.brand.name, address: from },
    to,
    replyTo: addressIn(model.brand.contact),
    subject: oneLine(`${model.title}, ${model.periodInWords}: ${model.client}`),
    text: `${paragraphs.join('\n\n')}\n\n${by.join('\n')}\n${model.footer}${stop.text}\n`,
    html: `<div lang="${model.language}" style="font-family:sans-serif;font-size:16px;line-height:1.5;max-width:40em">${paragraphs.map((text, at) => (at === 0 ? `<h1 style="font-size:20px">${inMarkup(text)}</h1>` : `<p>${inLines(text)}</p>`)).join('')}<p>${by.map(inLines).join('<br>')}</p><p style="color:#47525c;font-size:13px">${inMarkup(model.footer)}</p>${stop.html}</div>`,
    list: stopUrl ? { unsubscribe: stopUrl } : null,
    attachments: [{ filename: `${words.file}-${model.period.until}.pdf`, content: pdf, contentType: 'application/pdf' }],
  };
}

/** What stands behind the @ of the sender. */
export const domainOf = (from: string): string =>
  from
    .split('@')
    .at(-1)
    ?.replace(/[<>\s]/g, '') || 'localhost';

const ADDRESS = /[^\s<>,;:"()]+@[^\s<>,;:"()]+\.[^\s<>,;:"().]+/;

/** The first address of mail that a contact names. */
export const addressIn = (contact: string | null): string | null => (contact === null ? null : (ADDRESS.exec(contact)?.[0] ?? null));

/** A subject is one line: nothing in a name can become a header of its own. */
export const oneLine = (text: string): string => text.replace(/[\r\n\u2028\u2029]+/g, ' ').slice(0, 200);
