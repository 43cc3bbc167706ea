import { problem } from '../../platform/problems/problem.js';

/** Faults of water reports. */
export const reportsProblems = {
  /** Only a draft can be changed. */
  notDraft: problem(
    'REPORT_NOT_DRAFT',
    409,
    (d: { reportId: string; report: string; state: string }) =>
      `The report of ${d.report} is ${d.state}: it stays as it is. Take the approval back, or make a new report.`,
  ),
  /** What may have reached somebody cannot be taken back. */
  alreadyOut: problem(
    'REPORT_ALREADY_OUT',
    409,
    (d: { reportId: string; report: string }) =>
      `The report of ${d.report} was sent, or may have been: it stays as it is. Send a corrected one as a new report.`,
  ),
  /** A mail that nobody got, or of which nobody knows, does not make a report sent. */
  nobodyMailed: problem(
    'REPORT_REACHES_NOBODY',
    409,
    (d: { reportId: string; report: string; mails: string }) =>
      `Nobody was mailed the report of ${d.report}, because no mail is left to send: ${d.mails}. Say of each mail whether it arrived or is to be sent again, or give the client another address.`,
  ),
  /** What is approved is what was looked at. */
  seenIsOld: problem(
    'REPORT_FIGURES_CHANGED',
    409,
    (d: { reportId: string; report: string; seen: string; now: string }) =>
      `The figures of the report of ${d.report} have changed since you looked at it (${d.seen}, now ${d.now}). Load the page again, look at it, and approve it then.`,
  ),
  /** Nobody approves a price that is not known. */
  noOfferYet: problem(
    'OFFER_NOT_MADE',
    409,
    (d: { workOrderId: string }) =>
      `The price of work order ${d.workOrderId} is not known yet. Wait for the office’s offer, and approve it then.`,
  ),
  /** What is agreed to is what was looked at. */
  offerChanged: problem(
    'OFFER_CHANGED',
    409,
    (d: { id: string }) => `What is offered, or its price, has changed since you looked at it (${d.id}). Load the page again and decide.`,
  ),
  /** Only what was approved is sent. */
  notApproved: problem(
    'REPORT_NOT_APPROVED',
    409,
    (d: { reportId: string; report: string }) =>
      `The report of ${d.report} is a draft. Look at it and approve it before it is sent or shared.`,
  ),
  /** Somebody changed the report while it was being sent. */
  changedMeanwhile: problem(
    'REPORT_CHANGED_MEANWHILE',
    409,
    (d: { reportId: string; report: string }) =>
      `The report of ${d.report} was changed at the same moment. Load the page again and decide.`,
  ),
  /** What became of the mail is known already. */
  mailNotOpen: problem(
    'MAIL_NOT_OPEN',
    409,
    (d: { mailId: string; state: string }) => `Mail ${d.mailId} is ${d.state}: this cannot be said of it. Load the page again.`,
  ),
  /** The link is unknown, has ended or was taken back: the same answer. */
  linkNotValid: problem('SHARE_LINK_NOT_VALID', 404, () => 'This link does not work any more. Ask your landscape company for a new one.'),
  /** A link is for questions, not for floods of them. */
  tooManyQuestions: problem(
    'TOO_MANY_QUESTIONS',
    429,
    (d: { most: number }) => `${d.most} questions were asked about this report within a day. Call the office, or ask again tomorrow.`,
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
