import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { inMarkup as text } from './in-markup.js';

const WORDS = {
  en: {
    title: 'Ask us',
    label: 'Your question about this report. Say who you are.',
    email: 'Your e-mail address, if the answer should come by mail too',
    where: 'Question and answer are shown here, to whoever has this link.',
    before: 'Asked by this link',
    waits: 'Not answered yet.',
    send: 'Send the question',
    asked: 'Your question has reached the office.',
    back: 'Back to the report',
  },
  es: {
    title: 'Pregúntenos',
    label: 'Su pregunta sobre este informe. Diga quién es.',
    email: 'Su correo electrónico, si quiere la respuesta también por correo',
    where: 'La pregunta y la respuesta se muestran aquí, a quien tenga este enlace.',
    before: 'Preguntado por este enlace',
    waits: 'Todavía sin respuesta.',
    send: 'Enviar la pregunta',
    asked: 'Su pregunta llegó a la oficina.',
    back: 'Volver al informe',
  },
} as const;

export type Language = ReportModel['language'];

/** What was asked by a link, and the office's answer. */
export interface AskedBefore {
  readonly question: string;
  readonly askedOn: string;
  readonly answer: string | null;
  readonly answeredOn: string | null;
}

function askedBefore(language: Language, asked: readonly AskedBefore[]): string {
  if (asked.length === 0) return '';
  const { before, waits } = WORDS[language];
  const answerOf = ({ answer, answeredOn }: AskedBefore): string =>
    answer === null
      ? `<dd class="soft">${text(waits)}</dd>`
      : `<dd>${text(answer)} <span class="soft">${text(answeredOn ?? '')}</span></dd>`;
  const lines = asked.map((each) => `<dt>${text(each.question)} <span class="soft">${text(each.askedOn)}</span></dt>${answerOf(each)}`);
  return `<h2>${text(before)}</h2><dl>${lines.join('')}</dl>`;
}

/** What was asked by the link, and the form by which whoever has it asks the office. */
export function askForm(language: Language, action: string, asked: readonly AskedBefore[]): string {
  const { title, label, email, where, send } = WORDS[language];
  return [
    `<section class="ask">${askedBefore(language, asked)}<h2>${text(title)}</h2><form method="post" action="${text(action)}">`,
    `<label for="question">${text(label)}</label><textarea id="question" name="question" rows="4" maxlength="4000" required></textarea>`,
    `<label for="email">${text(email)}</label><input id="email" name="email" type="email" maxlength="254" autocomplete="email">`,
    `<p class="soft">${text(where)}</p><button>${text(send)}</button></form></section>`,
  ].join('');
}

/** Said when the question is kept. */
export function askedHtml(language: Language, { style, back }: { readonly style: string; readonly back: string }): string {
  const words = WORDS[language];
  return `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex"><title>${text(words.asked)}</title><link rel="stylesheet" href="${text(style)}"></head><body><main><h1>${text(words.asked)}</h1><p><a href="${text(back)}">${text(words.back)}</a></p></main></body></html>`;
}
