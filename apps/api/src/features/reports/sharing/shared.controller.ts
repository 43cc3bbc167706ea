import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { Body, Controller, Get, Header, HttpCode, Param, Post, Res, UseFilters } from '@nestjs/common';
import { dateFormats } from '@rillbook/showing/formats/dates.js';
import type { Response } from 'express';
import { organizationActor } from '../../../platform/database/actor.js';
import { Public } from '../../../platform/identity/allow.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { answerReport, isReportFile } from '../kept/files/answer-report.js';
import { OpenEdition, type OpenReport } from '../kept/open-edition.service.js';
import { dayIn } from '../gather/day-in.js';
import { readSecret } from '../secret-link.js';
import type { ClientQuestionRow } from '../asking/client-question.entity.js';
import { clientQuestions } from '../asking/client-question.repository.js';
import { AskByLink } from '../asking/ask-by-link.service.js';
import { type AskedBefore, askedHtml, type Language } from '../printing/ask-form.js';
import { reportHtml } from '../printing/report-html.js';
import { reportsProblems } from '../reports.problems.js';
import { LinkPageFilter } from './link-page.filter.js';
import type { ShareLinkRow } from './share-link.entity.js';
import { shareLinks } from './share-link.repository.js';

const PRINTING = path.resolve(import.meta.dirname, '../../../../printing');
/** What the page is dressed in: the PDF's own letters, so that drawings have room for their words. */
const DRESS: Readonly<Record<string, { readonly place: string; readonly type: string }>> = {
  'report.css': { place: 'report.css', type: 'text/css; charset=utf-8' },
  'public-sans-latin-400.ttf': { place: 'fonts/public-sans-latin-400.ttf', type: 'font/ttf' },
  'public-sans-latin-700.ttf': { place: 'fonts/public-sans-latin-700.ttf', type: 'font/ttf' },
};
const WHY = 'the link is its own key: to one report, until it ends or is taken back';

/** A report by its link: as a page, and as files. */
@UseFilters(LinkPageFilter)
@Controller('api/shared')
export class SharedController {
  constructor(
    private readonly opened: OpenEdition,
    private readonly asking: AskByLink,
  ) {}

  @Public(WHY)
  @Get(':shareToken')
  @Header('Content-Type', 'text/html; charset=utf-8')
  @Header('Cache-Control', 'private, no-store')
  async page(@Scope() scope: RequestScope, @Param('shareToken') token: string): Promise<string> {
    const { model, link } = await this.open(scope, token, 'page');
    const at = (file: string): string => `/api/shared/${token}/${file}`;
    const files = ['pdf', 'xlsx', 'csv'].map((kind) => ({ href: at(`report.${kind}`), name: kind.toUpperCase() }));
    const tx = await scope.open();
    const { timeZone } = await organizations.own(tx);
    const asked = (await clientQuestions.ofLink(tx, link.id)).map((row) => askedOf(row, model.language, timeZone));
    return reportHtml(model, { style: at('report.css'), files, ask: at('question'), asked });
  }

  /** A question to the office; answered by a page that says so. */
  @Public(WHY)
  @Post(':shareToken/question')
  @HttpCode(200)
  @Header('Content-Type', 'text/html; charset=utf-8')
  @Header('Cache-Control', 'private, no-store')
  async ask(@Scope() scope: RequestScope, @Param('shareToken') token: string, @Body() body: Record<string, unknown>): Promise<string> {
    const opened = await this.open(scope, token, 'question');
    const { model, link } = opened;
    const written = (field: string): string => (typeof body[field] === 'string' ? body[field] : '');
    await this.asking.run(await scope.open(), opened, { shareLinkId: link.id, question: written('question'), email: written('email') });
    const at = `/api/shared/${token}`;
    return askedHtml(model.language, { style: `${at}/report.css`, back: at });
  }

  @Public(WHY)
  @Get(':shareToken/:reportFile')
  async file(
    @Scope() scope: RequestScope,
    @Param('shareToken') token: string,
    @Param('reportFile') file: string,
    @Res() response: Response,
  ): Promise<void> {
    const dress = Object.hasOwn(DRESS, file) ? DRESS[file] : undefined;
    if (dress) {
      response.setHeader('Content-Type', dress.type);
      response.end(await readFile(path.join(PRINTING, dress.place)));
      return;
    }
    if (!isReportFile(file)) throw reportsProblems.linkNotValid({});
    const report = await this.open(scope, token, file);
    // That it was opened is kept before it is shown.
    await scope.become(null);
    await answerReport(response, file, report, this.opened);
  }

  /** Absent, ended, taken back, another's: the same answer. Who opened it, and when, is logged. */
  private async open(scope: RequestScope, token: string, file: string): Promise<OpenReport & { readonly link: ShareLinkRow }> {
    const named = readSecret(token);
    if (!named) throw reportsProblems.linkNotValid({});
    await scope.become(organizationActor(named.organizationId, 'job'));
    const tx = await scope.open();
    const link = await shareLinks.serving(tx, named.hash);
    if (!link) throw reportsProblems.linkNotValid({});
    await shareLinks.logVisit(tx, link.id, file, scope.request.headers['user-agent'] ?? null);
    const report = await this.opened.run(tx, link.reportId);
    if (!report.pdf) throw reportsProblems.linkNotValid({});
    return { ...report, link };
  }
}

/** A question with its answer, their days on the office's clock. */
function askedOf({ question, answer, askedAt, answeredAt }: ClientQuestionRow, language: Language, timeZone: string): AskedBefore {
  const { dayOfYear } = dateFormats(language, timeZone);
  const on = (at: Date): string => dayOfYear(dayIn(timeZone, at));
  return { question, askedOn: on(askedAt), answer, answeredOn: answeredAt && on(answeredAt) };
}
