import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { inMarkup as text } from './in-markup.js';

const WORDS = {
  en: {
    title: 'Ask us',
    label: 'Your question about this report. Say who you are, so that we can answer.',
    send: 'Send the question',
    asked: 'Your question has reached the office.',
    back: 'Back to the report',
  },
  es: {
    title: 'Pregúntenos',
    label: 'Su pregunta sobre este informe. Diga quién es, para que podamos responderle.',
    send: 'Enviar la pregunta',
    asked: 'Su pregunta llegó a la oficina.',
    back: 'Volver al informe',
  },
} as const;

type Language = ReportModel['language'];

/** The form by which whoever has the link asks the office. */
export function askForm(language: Language, action: string): string {
  const { title, label, send } = WORDS[language];
  return `<section class="ask"><h2>${text(title)}</h2><form method="post" action="${text(action)}"><label for="question">${text(label)}</label><textarea id="question" name="question" rows="4" maxlength="4000" required></textarea><button>${text(send)}</button></form></section>`;
}

/** Said when the question is kept. */
export function askedHtml(language: Language, { style, back }: { readonly style: string; readonly back: string }): string {
  const words = WORDS[language];
  return `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex"><title>${text(words.asked)}</title><link rel="stylesheet" href="${text(style)}"></head><body><main><h1>${text(words.asked)}</h1><p><a href="${text(back)}">${text(words.back)}</a></p></main></body></html>`;
}
