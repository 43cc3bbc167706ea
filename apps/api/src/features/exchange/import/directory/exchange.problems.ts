import { problem } from '../../../../platform/problems/problem.js';

/** Faults of import and export. */
export const exchangeProblems = {
  /** One import of an organization at a time. */
  importUnderWay: problem(
    'IMPORT_UNDER_WAY',
    409,
    () => 'Another import or export of this organization is under way. Wait until it has ended and try again.',
  ),
  /** The files are other ones than those that were checked. */
  fileChanged: problem('IMPORT_FILE_CHANGED', 409, (d: { says: string }) => `${d.says} Nothing was imported.`),
  /** There is no such upload, or it has been cleared away. */
  noSuchImport: problem(
    'IMPORT_NOT_FOUND',
    404,
    (d: { importId: string }) => `There is no upload ${d.importId}. Uploads are kept for a day: upload the files again.`,
  ),
  /** The office asked for all rows or nothing, and some are wrong. */
  rowsAreWrong: problem(
    'IMPORT_ROWS_WRONG',
    409,
    (d: { problems: number }) =>
      `${d.problems} ${d.problems === 1 ? 'thing is' : 'things are'} wrong in the files, so nothing was imported. Mend the rows, or import the good ones only.`,
  ),
  /** The upload has no rows to import. */
  nothingToImport: problem(
    'IMPORT_NOTHING_GOOD',
    409,
    () => 'The files hold no rows that can be imported. Mend them and upload them again.',
  ),
  /** The request came from another site's page. */
  notFromOurPages: problem(
    'REQUEST_NOT_FROM_PAGES',
    403,
    () => 'This request did not come from a page of Rillbook. Send the header x-rillbook-request: 1.',
  ),
  /** The request is no upload. */
  notAnUpload: problem(
    'UPLOAD_EXPECTED',
    400,
    (d: { found: string }) => `The request is not an upload of files (${d.found}). Send them as multipart/form-data.`,
  ),
  /** The upload holds no file. */
  uploadEmpty: problem('UPLOAD_EMPTY', 400, () => 'The upload holds no file. Choose CSV files, one .zip of them, or one .xlsx workbook.'),
  /** More than is taken at once. */
  uploadTooLarge: problem(
    'UPLOAD_TOO_LARGE',
    413,
    (d: { most: string }) => `The upload is larger than ${d.most}. Split it into several, or import a folder from the command line.`,
  ),
  /** More files than are taken at once. */
  uploadTooMany: problem(
    'UPLOAD_TOO_MANY_FILES',
    413,
    (d: { most: number }) => `The upload has more than ${d.most} files. Send only the import files.`,
  ),
  /** The upload broke off. */
  uploadBroken: problem(
    'UPLOAD_BROKEN_OFF',
    400,
    (d: { says: string }) => `The upload broke off (${d.says}). Nothing was kept: send it again.`,
  ),
  /** The file has no rejected rows. */
  nothingRejected: problem('IMPORT_NOTHING_REJECTED', 404, (d: { file: string }) => `No row of ${d.file} was refused.`),
};
