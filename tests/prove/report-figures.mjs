// Every figure of 200 random reports as GraphQL gives it, in the CSV, the workbook and the PDF's own text. `npm run prove -- report-figures 20`
// reads fewer, `report-figures 200 9000` others.
import { fork } from 'node:child_process';
import path from 'node:path';
import { showContent } from '../../apps/api/dist/features/reports/kept/report-content.type.js';
import { reportCsv } from '../../apps/api/dist/features/reports/printing/report-csv.js';
import { reportXlsx } from '../../apps/api/dist/features/reports/printing/report-xlsx.js';
import { writeReport } from '../../libs/showing/dist/report/write-report.js';
import { inventedReport } from '../support/invented-report.mjs';
import { pdfText } from '../support/pdf-text.mjs';
import { apart, figuresOfCsv, figuresOfXlsx, missingInPdf } from '../support/report-figures.mjs';

export const readsShared = false;

const CHILD = path.resolve(import.meta.dirname, '../../apps/api/printing/print-child.mjs');

function printing(child, id, report) {
  return new Promise((resolve, reject) => {
    const gone = (code) => reject(new Error(`the typesetter ended (${code})`));
    child.once('exit', gone);
    child.once('message', (answer) => {
      child.off('exit', gone);
      resolve(answer);
    });
    child.send({ id, report });
  });
}

/** GraphQL names a property by its id, the files by its name. */
const named = (model, { propertyId, ...figure }) => ({
  property: model.pages.find((page) => page.propertyId === propertyId)?.name ?? '',
  ...figure,
});

export async function prove([wish = '200', first = '0'] = []) {
  const [count, from] = [Number(wish), Number(first)];
  if (!(Number.isInteger(count) && count > 0 && Number.isInteger(from))) throw new Error(`${wish} ${first}: give a number of reports`);
  const child = fork(CHILD, { serialization: 'advanced', stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  let [figures, sentences] = [0, 0];
  const faults = [];
  try {
    for (let seed = from; seed < from + count; seed += 1) {
      const model = writeReport(inventedReport(seed));
      const wanted = showContent(model).figures.map((figure) => named(model, figure));
      const { pdf, problem } = await printing(child, seed, model);
      if (problem) throw new Error(`report ${seed}: ${problem}`);
      const text = await pdfText(pdf);
      const found = [
        ...apart('CSV', figuresOfCsv(reportCsv(model)), wanted),
        ...apart('workbook', figuresOfXlsx(reportXlsx(model)), wanted),
        ...missingInPdf(model, text).map((words) => `PDF does not say: ${words}`),
      ];
      faults.push(...found.map((fault) => `report ${seed}: ${fault}`));
      figures += wanted.length;
      sentences += model.pages.reduce((sum, page) => sum + 2 + page.sections.flatMap(({ lines }) => lines).length, 0);
    }
  } finally {
    child.kill('SIGKILL');
  }
  if (faults.length) throw new Error(`${faults.length} differences:\n${faults.slice(0, 10).join('\n')}`);
  return `${count} reports from seed ${from}: ${figures} figures equal in GraphQL, CSV, workbook and PDF text; ${sentences} sentences of theirs stand in the PDF`;
}
