import { Controller, Get, Header, HttpCode, Param, Post, UseFilters } from '@nestjs/common';
import { organizationActor } from '../../../platform/database/actor.js';
import { Public } from '../../../platform/identity/allow.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { readSecret } from '../secret-link.js';
import { inMarkup } from '../printing/in-markup.js';
import { reportsProblems } from '../reports.problems.js';
import { LinkPageFilter } from './link-page.filter.js';
import { shareLinks } from './share-link.repository.js';

const HTML = 'text/html; charset=utf-8';
const WHY = 'whoever got the mail may say that they want no more';
const WORDS = {
  ask: 'No more water reports by e-mail to {email}? · ¿No recibir más informes de agua por correo en {email}?',
  do: 'No more, please · No más, por favor',
  done: 'No more water reports will be sent to {email}. · Ya no se enviarán informes de agua a {email}.',
} as const;

const page = (inner: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex"><title>${inMarkup(WORDS.do)}</title></head><body><main>${inner}</main></body></html>`;

/** The link by which a recipient wants no more: a look changes nothing, for scanners follow every link (RFC 8058 asks for a POST). */
@UseFilters(LinkPageFilter)
@Controller('api/stop-reports')
export class StopReportsController {
  @Public(WHY)
  @Get(':stopToken')
  @Header('Content-Type', HTML)
  @Header('Cache-Control', 'private, no-store')
  async ask(@Scope() scope: RequestScope, @Param('stopToken') token: string): Promise<string> {
    const email = await this.recipient(scope, token);
    return page(
      `<h1>${inMarkup(WORDS.ask.replaceAll('{email}', () => email))}</h1><form method="post"><button>${inMarkup(WORDS.do)}</button></form>`,
    );
  }

  @Public(WHY)
  @Post(':stopToken')
  @HttpCode(200)
  @Header('Content-Type', HTML)
  @Header('Cache-Control', 'private, no-store')
  async stop(@Scope() scope: RequestScope, @Param('stopToken') token: string): Promise<string> {
    const email = await this.recipient(scope, token);
    await shareLinks.stop(await scope.open(), email);
    return page(`<h1>${inMarkup(WORDS.done.replaceAll('{email}', () => email))}</h1>`);
  }

  private async recipient(scope: RequestScope, token: string): Promise<string> {
    const named = readSecret(token);
    if (!named) throw reportsProblems.linkNotValid({});
    await scope.become(organizationActor(named.organizationId, 'job'));
    const email = await shareLinks.recipientOf(await scope.open(), named.hash);
    if (email === null) throw reportsProblems.linkNotValid({});
    return email;
  }
}
