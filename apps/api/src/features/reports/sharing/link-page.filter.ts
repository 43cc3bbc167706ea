import { type ArgumentsHost, Catch, type ExceptionFilter, HttpException } from '@nestjs/common';
import type { Response } from 'express';
import { asProblem } from '../../../platform/problems/answer.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { pageInBoth } from '../printing/page-in-both.js';
import { reportsProblems } from '../reports.problems.js';

/** Whoever follows a link has told no language: both are said. */
const WORDS = {
  gone: [
    'This link does not work any more. Ask your landscape company for a new one.',
    'Este enlace ya no sirve. Pida uno nuevo a su empresa de jardinería.',
  ],
  tooMany: ['Too many tries. Try again in some minutes.', 'Demasiados intentos. Intente otra vez en unos minutos.'],
  tooManyToday: [
    'Many questions were asked about this report today. Nothing was sent: call the office, or ask again tomorrow.',
    'Hoy se hicieron muchas preguntas sobre este informe. No se envió nada: llame a la oficina o pregunte otra vez mañana.',
  ],
  refused: [
    'Nothing was sent: the question is empty or too long, or the e-mail address is none. Go back and write it again.',
    'No se envió nada: la pregunta está vacía o es demasiado larga, o el correo electrónico no es válido. Regrese y escríbalo otra vez.',
  ],
  failed: ['Something went wrong. Nothing was changed: try again later.', 'Algo salió mal. No se cambió nada: intente más tarde.'],
} as const;

/** Answers of a link are pages for people: what is not there, too much or not taken is said in two languages, and nothing else is told. */
@Catch()
export class LinkPageFilter implements ExceptionFilter {
  catch(thrown: unknown, host: ArgumentsHost): void {
    const response = host.switchToHttp().getResponse<Response>();
    const status = thrown instanceof HttpException ? thrown.getStatus() : asProblem(thrown).status;
    if (response.headersSent) {
      response.end();
      return;
    }
    if (status === 429 && thrown instanceof Error) response.setHeader('Retry-After', String(retryOf(thrown)));
    response.status(status).setHeader('Content-Type', 'text/html; charset=utf-8').setHeader('Cache-Control', 'private, no-store');
    response.end(pageInBoth(WORDS[wordOf(status, thrown)]));
  }
}

const ONE_MINUTE_S = 60;
const ONE_DAY_S = 86_400;

const isOfTheDay = (thrown: unknown): boolean => asProblem(thrown).code === reportsProblems.tooManyQuestions({ most: 0 }).code;

function retryOf(thrown: Error): number {
  if (isOfTheDay(thrown)) return ONE_DAY_S;
  const { code, details } = asProblem(thrown);
  const seconds = code === platformProblems.tooMany({ retryInSeconds: 0 }).code ? details['retryInSeconds'] : null;
  return typeof seconds === 'number' ? Math.ceil(seconds) : ONE_MINUTE_S;
}

function wordOf(status: number, thrown: unknown): keyof typeof WORDS {
  if (status === 404) return 'gone';
  if (status === 429) return isOfTheDay(thrown) ? 'tooManyToday' : 'tooMany';
  return status < 500 ? 'refused' : 'failed';
}
