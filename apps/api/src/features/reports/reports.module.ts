import { Module } from '@nestjs/common';
import { GatherReport } from './gather/gather-report.service.js';
import { GivenPhotos } from './gather/given-photos.service.js';
import { OpenEdition } from './kept/open-edition.service.js';
import { ReportContentResolver } from './kept/report-content.field-resolver.js';
import { ReportController } from './kept/report.controller.js';
import { WaterReportResolver } from './kept/water-report.resolver.js';
import { PrintReport } from './printing/print-report.service.js';

/** Water reports: written once from what is on record, printed, approved, sent, and kept as they were sent. */
@Module({
  controllers: [ReportController],
  providers: [WaterReportResolver, ReportContentResolver, OpenEdition, GatherReport, GivenPhotos, PrintReport],
})
export class ReportsModule {}
