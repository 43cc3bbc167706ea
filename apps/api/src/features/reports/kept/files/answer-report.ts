import type { Response } from 'express';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { reportCsv } from '../../printing/report-csv.js';
import { reportXlsx } from '../../printing/report-xlsx.js';
import type { OpenEdition, OpenReport } from '../open-edition.service.js';

interface Kind {
  readonly type: string;
  readonly disposition: 'inline' | 'attachment';
  readonly bytes: (report: OpenReport, opened: OpenEdition) => Promise<Buffer> | Buffer;
}

/** The files that a report is given as, by name. */
const FILES: Readonly<Record<string, Kind>> = {
  'report.pdf': { type: 'application/pdf', disposition: 'inline', bytes: (report, opened) => opened.pdfOf(report) },
  'report.csv': { type: 'text/csv; charset=utf-8', disposition: 'attachment', bytes: ({ model }) => Buffer.from(reportCsv(model)) },
  'report.xlsx': {
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    disposition: 'attachment',
    bytes: ({ model }) => reportXlsx(model),
  },
};

/** Whether a report is given as a file of that name. */
export const isReportFile = (file: string): boolean => Object.hasOwn(FILES, file);

/** Answers with a report as one of its files. */
export async function answerReport(response: Response, file: string, report: OpenReport, opened: OpenEdition): Promise<void> {
  const kind = isReportFile(file) ? FILES[file]! : null;
  if (!kind) throw platformProblems.notFound({ thing: 'file of a report', id: file.slice(0, 40) });
  const bytes = await kind.bytes(report, opened);
  const ending = file.slice(file.lastIndexOf('.'));
  response.setHeader('Content-Type', kind.type);
  response.setHeader('Content-Disposition', `${kind.disposition}; filename="water-report-${report.model.period.until}${ending}"`);
  response.setHeader('Cache-Control', 'private, no-store');
  response.end(bytes);
}
