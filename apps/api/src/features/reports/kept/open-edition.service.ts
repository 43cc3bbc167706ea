import { gunzipSync, gzipSync } from 'node:zlib';
import { Injectable } from '@nestjs/common';
import { restoreReport } from '@rillbook/showing/report/restore-report.js';
import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { GatherReport } from '../gather/gather-report.service.js';
import { PrintReport } from '../printing/print-report.service.js';
import { reportsProblems } from '../reports.problems.js';
import { nameOfReport } from './loaders/report-name.js';
import { waterReports } from './water-report.repository.js';
import type { WaterReportRow } from './water-report.entity.js';

/** A report with its model; and with its PDF where that is kept. */
export interface OpenReport {
  readonly report: WaterReportRow;
  readonly model: ReportModel;
  readonly pdf: Buffer | null;
}

/** Opens a report: a draft from what is on record now, one that was approved or sent as it was made then. */
@Injectable()
export class OpenEdition {
  constructor(
    private readonly gather: GatherReport,
    private readonly printer: PrintReport,
  ) {}

  async run(tx: OrganizationTransaction, reportId: string): Promise<OpenReport> {
    const report = await waterReports.one(tx, reportId);
    if (!report) throw platformProblems.notFound({ thing: 'report', id: reportId });
    const edition = report.state === 'draft' ? null : await waterReports.edition(tx, report.id);
    if (edition) return { report, model: restoreReport(gunzipSync(edition.model).toString()), pdf: edition.pdf };
    return { report, model: await this.gather.run(tx, report), pdf: null };
  }

  /** The PDF of a report that was opened. */
  async pdfOf({ model, pdf }: OpenReport): Promise<Buffer> {
    return pdf ?? this.printer.run(model);
  }

  /** The letters for which its PDF has no sign. */
  async unprintedOf({ model }: OpenReport): Promise<string> {
    return this.printer.unprinted(model);
  }

  /** Makes a report anew and keeps what was made; refused where it is not what was seen. `seen` is a data version, null where nobody looked. */
  async keep(tx: OrganizationTransaction, report: WaterReportRow, seen: string | null): Promise<ReportModel> {
    const model = await this.gather.run(tx, report);
    if (seen !== null && seen !== model.dataVersion)
      throw reportsProblems.seenIsOld({ reportId: report.id, report: await nameOfReport(tx, report), seen, now: model.dataVersion });
    const pdf = await this.printer.run(model);
    await waterReports.keepEdition(tx, {
      reportId: report.id,
      dataVersion: model.dataVersion,
      model: gzipSync(JSON.stringify(model)),
      pdf,
    });
    return model;
  }
}
