import type { FileName } from '../columns/import-files.js';
import type { ImportSource } from '../files/table-file.js';
import type { Problem } from '../problems/problem.js';
import type { AcceptedRow, ImportedFile, ImportedRow, ReadFile, RejectedRow, UnreadFile } from '../rows/imported-row.js';
import { readImport } from '../rows/read-import.js';
import type { FileMerge, ImportTarget } from './directory/file-merge.js';
import { FIRST_PROBLEMS, ProblemList } from './problem-list.js';
import type { FileReport, ImportListener } from './import-report.js';
import { mergeOfFiles } from './merge-of-files.js';
import { rejectedFrom } from './rejected-from.js';

/** Counts of one file while it is merged. */
interface Counts {
  new: number;
  changed: number;
  same: number;
  wrong: number;
}

/** What one pass over an import's source found; nothing of it is kept unless its transaction is committed. */
export interface Passed {
  readonly files: readonly FileReport[];
  readonly ignored: readonly Problem[];
  readonly problemsTotal: number;
  readonly rows: number;
}

/** Not a further line of the row before it. */
function isARow(row: ImportedRow): boolean {
  return row.verdict === 'accepted' || row.isBeside !== true;
}

/** One pass over the files of an import: every row read, judged, and merged within a transaction, in constant memory. */
export class ImportPass {
  private readonly files: FileReport[] = [];
  private readonly ignored: Problem[] = [];
  private readonly problemRoom = { left: FIRST_PROBLEMS };
  private readonly noticeRoom = { left: FIRST_PROBLEMS };
  private rows = 0;

  constructor(
    private readonly to: ImportTarget,
    private readonly listener: ImportListener,
  ) {}

  async run(source: ImportSource): Promise<Passed> {
    for await (const file of readImport(source, this.to.directory.known())) await this.file(file);
    const problemsTotal = this.files.reduce((sum, file) => sum + file.problemsTotal, 0);
    return { files: this.files, ignored: this.ignored, problemsTotal, rows: this.rows };
  }

  private async file(file: ImportedFile): Promise<void> {
    if (file.status === 'ignored') this.ignored.push(...file.problems);
    else if (file.status === 'refused') this.files.push(this.refused(file));
    else this.files.push(await this.read(file as ReadFile));
  }

  private refused({ name, file, problems, recognized }: UnreadFile): FileReport {
    const list = new ProblemList(this.problemRoom);
    list.add(problems);
    for (const problem of problems) this.listener.problem?.(problem);
    const nothing = { new: 0, changed: 0, same: 0, wrong: 0, notices: [], noticesTotal: 0 };
    return {
      name,
      file,
      ...(recognized && { recognized }),
      rejectedAs: null,
      status: 'refused',
      ...nothing,
      problems: list.first,
      problemsTotal: list.total,
    };
  }

  private async read(file: ReadFile): Promise<FileReport> {
    const counts: Counts = { new: 0, changed: 0, same: 0, wrong: 0 };
    const problems = new ProblemList(this.problemRoom);
    const notices = new ProblemList(this.noticeRoom);
    notices.add(file.notices);
    let done = 0;
    for await (const batch of file.batches()) {
      notices.add(batch.flatMap((row) => row.warnings));
      const rejected = await this.merge(file, batch, counts);
      const found = rejected.flatMap((row) => row.problems);
      problems.add(found);
      for (const problem of found) this.listener.problem?.(problem);
      if (rejected.length) await this.listener.rejected?.(file.rejectedAs, file.header, rejected);
      done += batch.filter(isARow).length;
      await this.listener.progress?.(file.file, done, file.rowCount);
    }
    this.rows += done;
    const { first, total } = problems;
    return {
      name: file.name,
      file: file.file,
      ...(file.recognized && { recognized: file.recognized }),
      rejectedAs: file.rejectedAs,
      status: 'read',
      ...counts,
      notices: notices.first,
      noticesTotal: notices.total,
      problems: first,
      problemsTotal: total,
    };
  }

  /** Merges the good rows of a batch; gives the others back, also those that only the database could tell to be wrong. */
  private async merge(file: ReadFile, batch: readonly ImportedRow[], counts: Counts): Promise<RejectedRow[]> {
    const rejected = batch.filter((row): row is RejectedRow => row.verdict === 'rejected');
    const accepted = batch.filter((row): row is AcceptedRow => row.verdict === 'accepted');
    if (accepted.length) {
      const merge = mergeOfFiles[file.file] as FileMerge<FileName>;
      const merged = await merge(this.to, { name: file.name, columns: file.columns, rows: accepted });
      counts.new += merged.created;
      counts.changed += merged.changed;
      counts.same += merged.same;
      rejected.push(...(merged.refused ?? []).map(({ row, problem }) => rejectedFrom(file, row, problem)));
    }
    counts.wrong += rejected.filter(isARow).length;
    return rejected;
  }
}
