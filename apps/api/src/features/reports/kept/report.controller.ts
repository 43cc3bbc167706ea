import { Controller, Get, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { OpenEdition } from './open-edition.service.js';

/** A report as files: what the preview shows is what is sent. */
@Controller('api/reports')
export class ReportController {
  constructor(private readonly opened: OpenEdition) {}

  @Allow(Permission.ReadReports)
  @Get(':waterReportId/report.pdf')
  async pdf(@Scope() scope: RequestScope, @Param('waterReportId') id: string, @Res() response: Response): Promise<void> {
    const opened = await this.opened.run(await scope.open(), id);
    const bytes = await this.opened.pdfOf(opened);
    response.setHeader('Content-Type', 'application/pdf');
    response.setHeader('Content-Disposition', `inline; filename="water-report-${opened.model.period.until}.pdf"`);
    response.setHeader('Cache-Control', 'private, no-store');
    response.end(bytes);
  }
}
