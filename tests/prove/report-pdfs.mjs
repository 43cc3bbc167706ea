// 500 reports in one worker: no failure, how long each takes, how much memory grows, and what each PDF holds. `npm run prove -- report-pdfs 100`
// makes fewer. Their structure and soundness are looked at by poppler-utils and qpdf where they are installed.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fork } from 'node:child_process';
import { writeReport } from '../../libs/showing/dist/report/write-report.js';
import { inventedReport } from '../support/invented-report.mjs';
import { pdfUaFaults } from '../support/pdf/pdf-ua.mjs';

export const readsShared = false;

const REPORTS = 500;
const MOST_MS = 500;
const MOST_BYTES = 100e6;
const WARM_UP = 20;
const CHILD = path.resolve(import.meta.dirname, '../../apps/api/printing/print-child.mjs');

const has = (tool) => spawnSync(tool, ['--version']).error === undefined;
const said = (tool, args) => spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 64 << 20 }).stdout;

/** What is wrong with a PDF; nothing where all is as promised. */
function faultsOf(file, model, tools) {
  const faults = [];
  if (tools.qpdf && spawnSync('qpdf', ['--check', file]).status !== 0) faults.push('qpdf --check does not pass');
  if (!tools.poppler) return faults;
  const structure = said('pdfinfo', ['-struct-text', file]);
  if (!/Tagged: +yes/.test(said('pdfinfo', [file]))) faults.push('not tagged');
  if (!/\bH1\b/.test(structure) || !/\bTH\b/.test(structure) || !/\/Scope \/Column/.test(structure) || !/\/Scope \/Row/.test(structure))
    faults.push('no headings or heads of columns and rows in its structure');
  const figures = (structure.match(/^ *Figure/gm) ?? []).length;
  const drawn = model.pages.reduce((sum, page) => sum + 1 + page.year.months.filter(({ drawn: { svg } }) => svg).length, 0);
  if (figures < drawn) faults.push(`${figures} figures in its structure, ${drawn} drawn`);
  return faults;
}

export async function prove([wish] = []) {
  const count = Number(wish ?? REPORTS);
  if (!(Number.isInteger(count) && count > WARM_UP)) throw new Error(`${wish}: give a number of reports above ${WARM_UP}`);
  const tools = { qpdf: has('qpdf'), poppler: has('pdfinfo') };
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-pdfs-'));
  const child = fork(CHILD, { serialization: 'advanced' });
  // Processor time is judged: what else the machine does is not the typesetter's. The clock's is told beside it.
  const times = [];
  const waits = [];
  let [before, most, alts] = [0, 0, 0];
  try {
    for (let seed = 0; seed < count; seed += 1) {
      const model = writeReport(inventedReport(seed));
      const begun = process.hrtime.bigint();
      const answer = await new Promise((resolve, reject) => {
        child.once('message', resolve);
        child.once('exit', (code) => reject(new Error(`the typesetter ended (${code})`)));
        child.send({ id: seed, report: model });
      });
      child.removeAllListeners('exit');
      waits.push(Number(process.hrtime.bigint() - begun) / 1e6);
      times.push(answer.cpuMs);
      if (answer.problem) throw new Error(`report ${seed}: ${answer.problem}`);
      if (seed === WARM_UP) before = answer.rss;
      if (seed >= WARM_UP) most = Math.max(most, answer.rss);
      alts += model.pages.filter(({ gauge }) => gauge.alt.length > 20).length;
      if (seed % 10) continue;
      const file = path.join(folder, `${seed}.pdf`);
      writeFileSync(file, answer.pdf);
      const faults = [...faultsOf(file, model, tools), ...pdfUaFaults(answer.pdf)];
      if (faults.length) throw new Error(`report ${seed}: ${faults.join('; ')}`);
    }
  } finally {
    child.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  }
  const shareOf = (list) => {
    const sorted = [...list].sort((a, b) => a - b);
    return (share) => sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
  };
  const [at, waited] = [shareOf(times), shareOf(waits)];
  const growth = most - before;
  const looked = [
    tools.qpdf ? 'qpdf --check passed' : 'qpdf is not installed: that part is skipped',
    tools.poppler
      ? 'structure, table heads and figures found by poppler'
      : 'poppler-utils is not installed: the structure was not looked at',
  ];
  const says = `${count} reports, none failed; processor time median ${at(0.5).toFixed(0)} ms, p95 ${at(0.95).toFixed(0)} ms (by the clock ${waited(0.5).toFixed(0)} and ${waited(0.95).toFixed(0)} ms); memory grew by ${(growth / 1e6).toFixed(0)} MB; ${alts} gauges with their words; every tenth: no fault by PDF/UA-1 that a machine can find; ${looked.join('; ')}`;
  if (!(at(0.95) <= MOST_MS)) throw new Error(`${says}: p95 at most ${MOST_MS} ms was promised`);
  if (!(growth <= MOST_BYTES)) throw new Error(`${says}: at most 100 MB was promised`);
  return says;
}
