import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { Controller, Get, Header, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { organizationActor } from '../../../platform/database/actor.js';
import { Public } from '../../../platform/identity/allow.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { answerReport } from '../kept/answer-report.js';
import { OpenEdition, type OpenReport } from '../kept/open-edition.service.js';
import { readSecret } from '../secret-link.js';
import { reportHtml } from '../printing/report-html.js';
import { reportsProblems } from '../reports.problems.js';
import { shareLinks } from './share-link.repository.js';

const STYLE = path.resolve(import.meta.dirname, '../../../../printing/report.css');
const WHY = 'the link is its own key: to one report, until it ends or is taken back';

/** A report by its link: as a page, and as files. */
@Controller('api/shared')
export class SharedController {
  constructor(private readonly opened: OpenEdition) {}

  @Public(WHY)
  @Get(':shareToken')
  @Header('Content-Type', 'text/html; charset=utf-8')
  @Header('Cache-Control', 'private, no-store')
  async page(@Scope() scope: RequestScope, @Param('shareToken') token: string): Promise<string> {
    const { model } = await this.open(scope, token, 'page');
    const at = (file: string): string => `/api/shared/${token}/${file}`;
    const files = ['pdf', 'xlsx', 'csv'].map((kind) => ({ href: at(`report.${kind}`), name: kind.toUpperCase() }));
    return reportHtml(model, { style: at('report.css'), files });
  }

  @Public(WHY)
  @Get(':shareToken/:reportFile')
  async file(
    @Scope() scope: RequestScope,
    @Param('shareToken') token: string,
    @Param('reportFile') file: string,
    @Res() response: Response,
  ): Promise<void> {
    if (file === 'report.css') {
      response.setHeader('Content-Type', 'text/css; charset=utf-8');
      response.end(await readFile(STYLE));
      return;
    }
    const report = await this.open(scope, token, file);
    // That it was opened is kept before it is shown.
    await scope.become(null);
    await answerReport(response, file, report, this.opened);
  }

  /** Absent, ended, taken back, another's: the same answer. Who opened it, and when, is logged. */
  private async open(scope: RequestScope, token: string, file: string): Promise<OpenReport> {
    const named = readSecret(token);
    if (!named) throw reportsProblems.linkNotValid({});
    await scope.become(organizationActor(named.organizationId, 'job'));
    const tx = await scope.open();
    const link = await shareLinks.serving(tx, named.hash);
    if (!link) throw reportsProblems.linkNotValid({});
    await shareLinks.logVisit(tx, link.id, file.slice(0, 40), scope.request.headers['user-agent'] ?? null);
    const report = await this.opened.run(tx, link.reportId);
    if (!report.pdf) throw reportsProblems.linkNotValid({});
    return report;
  }
}
