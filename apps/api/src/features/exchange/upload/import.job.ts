import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { organizationActor } from '../../../platform/database/actor.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import { ImportDeed } from '../import/import-deed.service.js';
import type { ImportListener, ImportReport } from '../import/import-report.js';
import type { ProblemLanguage } from '../problems/problem-sentence.js';
import { IMPORT } from './import-jobs.repository.js';
import { UploadFolder } from './upload-folder.js';
import { forgetFiles, recordOf, sourceOf } from './upload-record.js';

/** What the background work is told. */
export interface ImportPayload {
  readonly importId: string;
  readonly rows: 'all' | 'good';
  readonly personId: string | null;
  readonly language: ProblemLanguage;
}

const TELL_EVERY_MS = 500;

/** Imports an upload that was checked and accepted. Done again, it changes nothing. */
@Injectable()
export class ImportJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly deed: ImportDeed,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(IMPORT, (run) => this.run(run));
  }

  private async run(run: JobRun): Promise<string> {
    const { importId, rows, personId, language } = run.payload as unknown as ImportPayload;
    const folder = await UploadFolder.find(run.organizationId, importId);
    const record = await recordOf(folder);
    const by = { ...organizationActor(run.organizationId, 'import'), personId };
    const listener = telling(run, record.report.rows);
    const report = await this.deed.run(by, await sourceOf(record), { rows, listener });
    if (!report.written)
      throw report.problemsTotal ? exchangeProblems.rowsAreWrong({ problems: report.problemsTotal }) : exchangeProblems.nothingToImport({});
    await run.progress(report.rows, report.rows);
    await forgetFiles(record);
    return ended(report, language);
  }
}

function telling(run: JobRun, total: number): ImportListener {
  let before = 0;
  let file = '';
  let toldAt = 0;
  let last = 0;
  return {
    async progress(name, done) {
      if (name !== file) before += last;
      file = name;
      last = done;
      if (Date.now() - toldAt < TELL_EVERY_MS) return;
      toldAt = Date.now();
      await run.progress(Math.min(total, before + done), total);
    },
  };
}

const count = (value: number, language: ProblemLanguage): string => value.toLocaleString(language === 'es' ? 'es-US' : 'en-US');

/** How the import ended, in a sentence. */
function ended({ files }: ImportReport, language: ProblemLanguage): string {
  const sum = (of: 'new' | 'changed' | 'same' | 'wrong'): string =>
    count(
      files.reduce((total, file) => total + file[of], 0),
      language,
    );
  return language === 'es'
    ? `${sum('new')} filas nuevas, ${sum('changed')} cambiadas, ${sum('same')} iguales, ${sum('wrong')} rechazadas`
    : `${sum('new')} rows new, ${sum('changed')} changed, ${sum('same')} same, ${sum('wrong')} refused`;
}
