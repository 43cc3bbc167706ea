import { Controller, Get, Param, Res, UseFilters } from '@nestjs/common';
import type { Response } from 'express';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import type { RequestScope } from '../../../../platform/identity/request-scope.js';
import { Scope } from '../../../../platform/identity/tx.js';
import { answerReport } from './answer-report.js';
import { FilePageFilter } from './file-page.filter.js';
import { OpenEdition } from '../open-edition.service.js';

/** A report as files: what the preview shows is what is sent. */
@Controller('api/reports')
@UseFilters(FilePageFilter)
export class ReportController {
  constructor(private readonly opened: OpenEdition) {}

  /** report.pdf, report.csv or report.xlsx */
  @Allow(Permission.ReadReports)
  @Get(':waterReportId/:reportFile')
  async file(
    @Scope() scope: RequestScope,
    @Param('waterReportId') id: string,
    @Param('reportFile') file: string,
    @Res() response: Response,
  ): Promise<void> {
    await answerReport(response, file, await this.opened.run(await scope.open(), id), this.opened);
  }
}
