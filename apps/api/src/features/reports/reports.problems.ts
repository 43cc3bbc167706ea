import { problem } from '../../platform/problems/problem.js';

/** Faults of water reports. */
export const reportsProblems = {
  /** Only a draft can be changed. */
  notDraft: problem(
    'REPORT_NOT_DRAFT',
    409,
    (d: { reportId: string; state: string }) =>
      `Report ${d.reportId} is ${d.state}: it stays as it is. Take the approval back, or make a new report.`,
  ),
  /** The report has no property to tell of. */
  nothingToTell: problem(
    'REPORT_WITHOUT_PROPERTY',
    409,
    (d: { client: string }) => `${d.client} has no property in use: there is nothing to report. Add a property, or choose another client.`,
  ),
  /** The typesetter could not make the PDF. */
  notPrinted: problem(
    'REPORT_NOT_PRINTED',
    500,
    (d: { why: string }) => `The PDF could not be made: ${d.why}. The report itself is safe; try again, or look at it as a page.`,
  ),
};
