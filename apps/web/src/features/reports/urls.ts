import { type Address, monthIn } from '../../page/use-address.js';

export interface ReportsPlace {
  /** the month in which the reports end; the newest where none is named */
  readonly month: string | null;
  /** the report that is open */
  readonly report: string | null;
}

export const reportsAddress: Address<ReportsPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')), report: query.get('report') }),
  write: ({ month, report }) => ({ month, report }),
};

/** A report as a file; the preview is the PDF that is sent. */
export const reportFile = (id: string, kind: 'pdf' | 'csv' | 'xlsx'): string => `/api/reports/${id}/report.${kind}`;
