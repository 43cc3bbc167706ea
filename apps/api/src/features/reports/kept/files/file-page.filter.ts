import { type ArgumentsHost, Catch, type ExceptionFilter, HttpException } from '@nestjs/common';
import type { Response } from 'express';
import { inTransaction } from '../../../../platform/database/organization-transaction.js';
import { people } from '../../../../platform/identity/members/person.repository.js';
import type { RequestScope, ScopedRequest } from '../../../../platform/identity/request-scope.js';
import { asProblem } from '../../../../platform/problems/answer.js';
import { log } from '../../../../platform/problems/log.js';
import { ProblemFilter } from '../../../../platform/problems/problem.filter.js';
import { pageInBoth } from '../../printing/page-in-both.js';

const WORDS = {
  signIn: ['You are not signed in. Sign in, then open the report again.', 'No ha iniciado sesión. Iníciela y abra otra vez el informe.'],
  notAllowed: ['You may not open this report.', 'Usted no puede abrir este informe.'],
  gone: [
    'This report or file is not there. It may have been thrown away: look for it in the list of reports.',
    'Este informe o archivo no está. Quizás se descartó: búsquelo en la lista de informes.',
  ],
  failed: [
    'The report could not be made. Nothing was changed: try again, and tell the office if it happens again.',
    'El informe no se pudo hacer. No se cambió nada: intente otra vez y avise a la oficina si se repite.',
  ],
} as const;

/** A report's file that cannot be given is told by a page where a browser shows it; programs get the code and its details. */
@Catch()
export class FilePageFilter implements ExceptionFilter {
  private readonly forPrograms = new ProblemFilter();

  async catch(thrown: unknown, host: ArgumentsHost): Promise<void> {
    const http = host.switchToHttp();
    const [request, response] = [http.getRequest<ScopedRequest>(), http.getResponse<Response>()];
    if (request.accepts(['json', 'html']) !== 'html') {
      this.forPrograms.catch(thrown, host);
      return;
    }
    const status = thrown instanceof HttpException ? thrown.getStatus() : asProblem(thrown).status;
    const language = (await ownLanguage(request.scope)) ?? (request.acceptsLanguages(['en', 'es']) === 'es' ? 'es' : 'en');
    response.status(status).setHeader('Content-Type', 'text/html; charset=utf-8').setHeader('Cache-Control', 'private, no-store');
    response.end(pageInBoth(WORDS[wordOf(status)], language));
  }
}

/** The language of whoever is signed in; null for a stranger, or where it cannot be asked: why a file cannot be given is told all the same. */
async function ownLanguage(scope: RequestScope | undefined): Promise<'en' | 'es' | null> {
  const actor = scope?.actor;
  if (!scope || !actor?.personId) return null;
  try {
    const { language } = await inTransaction(scope.source, actor, (tx) => people.one(tx, actor.personId!));
    return language;
  } catch (problem) {
    log.warn({ message: String(problem) }, 'the language of whoever asked for a report is not known');
    return null;
  }
}

function wordOf(status: number): keyof typeof WORDS {
  if (status === 401) return 'signIn';
  if (status === 403) return 'notAllowed';
  return status === 404 ? 'gone' : 'failed';
}
