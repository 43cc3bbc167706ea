import type { MailSettings } from '../../posting/mail-settings.js';
import { inLines } from '../../printing/in-markup.js';
import { addressIn, domainOf, oneLine, type ReportMessage } from '../../posting/report-message.js';
import type { ClientQuestionRow } from '../client-question.entity.js';

/** An answer that goes to whoever asked. */
export interface AnswerToMail {
  readonly question: Pick<ClientQuestionRow, 'id' | 'question' | 'language' | 'answeredAt' | 'shareLinkId'>;
  readonly to: string;
  readonly answer: string;
  readonly attempts: number;
  readonly by: { readonly name: string; readonly contact: string | null };
}

const WORDS = {
  en: {
    subject: 'Your question to {office}',
    asked: 'You asked:',
    answered: 'Our answer:',
    onLink: 'Question and answer also stand on the page of the report where you asked.',
    onPage: 'Question and answer also stand on your own page:',
  },
  es: {
    subject: 'Su pregunta a {office}',
    asked: 'Usted preguntó:',
    answered: 'Nuestra respuesta:',
    onLink: 'La pregunta y la respuesta están también en la página del informe donde preguntó.',
    onPage: 'La pregunta y la respuesta están también en su propia página:',
  },
} as const;

/** The mail of an answer, in the language of whoever asked. The same answer has the same Message-ID whenever it is tried. */
export function answerMessage(
  { question, to, answer, by }: AnswerToMail,
  { from, publicUrl }: Pick<MailSettings, 'from' | 'publicUrl'>,
): { readonly messageId: string; readonly message: ReportMessage } {
  const words = WORDS[question.language];
  const messageId = `answer-${question.id}-${question.answeredAt?.getTime() ?? 0}`;
  const where = question.shareLinkId ? words.onLink : publicUrl ? `${words.onPage} ${publicUrl}` : null;
  const signed = [by.name, by.contact].filter((line) => line !== null);
  const told = [words.asked, question.question, words.answered, answer, ...(where ? [where] : [])];
  const paragraph = (text: string): string => `<p>${inLines(text)}</p>`;
  return {
    messageId,
    message: {
      messageId: `<${messageId}@${domainOf(from)}>`,
      from: { name: by.name, address: from },
      to,
      replyTo: addressIn(by.contact),
      subject: oneLine(words.subject.replace('{office}', () => by.name)),
      text: `${told.join('\n\n')}\n\n${signed.join('\n')}\n`,
      html: `<div lang="${question.language}" style="font-family:sans-serif;font-size:16px;line-height:1.5;max-width:40em">${told.map(paragraph).join('')}<p>${signed.map(inLines).join('<br>')}</p></div>`,
      list: null,
      attachments: [],
    },
  };
}
