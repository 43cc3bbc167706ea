import { type ChildProcess, fork } from 'node:child_process';
import path from 'node:path';
import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { reportsProblems } from '../reports.problems.js';

/** The typesetter's process, its template and its fonts lie beside the product's code. */
const CHILD = path.resolve(import.meta.dirname, '../../../../printing/print-child.mjs');
const MOST_REPORTS = 200;
const MOST_BYTES = 400e6;
const TIMEOUT_MS = 20_000;
/** Beyond Latin letters, punctuation, money, arrows and mathematics. */
const MAY_LACK = /[^\u0000-\u024f\u2000-\u206f\u20a0-\u20bf\u2190-\u22ff]/;

interface Printed {
  readonly id: number;
  readonly pdf?: Uint8Array;
  readonly unprinted?: string;
  readonly problem?: string;
  readonly rss: number;
}

/** Prints reports in a process of its own, one after the other; the process is replaced before it grows old. */
@Injectable()
export class PrintReport implements OnModuleDestroy {
  private child: ChildProcess | null = null;
  private printed = 0;
  private turn: Promise<unknown> = Promise.resolve();

  /** The report as a tagged PDF (PDF/UA-1). */
  async run(report: ReportModel): Promise<Buffer> {
    return Buffer.from((await this.inTurn(report)).pdf);
  }

  /** The letters of a report for which the PDF has no sign, each once: the typesetter is asked where there are any that it may not have. */
  async unprinted(report: ReportModel): Promise<string> {
    return MAY_LACK.test(JSON.stringify(report)) ? (await this.inTurn(report)).unprinted : '';
  }

  private inTurn(report: ReportModel): Promise<Required<Pick<Printed, 'pdf' | 'unprinted'>>> {
    const mine = this.turn.then(() => this.print(report));
    this.turn = mine.catch(() => undefined);
    return mine;
  }

  onModuleDestroy(): void {
    this.end();
  }

  private async print(report: ReportModel): Promise<Required<Pick<Printed, 'pdf' | 'unprinted'>>> {
    const child = this.living();
    this.printed += 1;
    const {
      pdf,
      unprinted = '',
      problem,
      rss,
    } = await answerOf(child, { id: this.printed, report }).catch((thrown: Error) => {
      this.end();
      throw reportsProblems.notPrinted({ why: thrown.message });
    });
    if (this.printed >= MOST_REPORTS || rss > MOST_BYTES) this.end();
    if (!pdf) throw reportsProblems.notPrinted({ why: problem || 'the typesetter gave no reason' });
    return { pdf, unprinted };
  }

  private living(): ChildProcess {
    // One that ended while nobody printed is replaced, and costs no report.
    if (this.child && !this.child.connected) this.end();
    this.child ??= fork(CHILD, { serialization: 'advanced', stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
    return this.child;
  }

  private end(): void {
    this.child?.removeAllListeners();
    this.child?.kill('SIGKILL');
    this.child = null;
    this.printed = 0;
  }
}

/** Asks the child and waits: for its answer, its end, or too long. */
function answerOf(child: ChildProcess, asked: { readonly id: number; readonly report: ReportModel }): Promise<Printed> {
  return new Promise((resolve, reject) => {
    const settle = (then: () => void): void => {
      clearTimeout(timer);
      child.off('message', onMessage);
      child.off('exit', onExit);
      child.off('error', onError);
      then();
    };
    const onMessage = (answer: Printed): void => {
      if (answer.id === asked.id) settle(() => resolve(answer));
    };
    const onExit = (code: number | null): void => settle(() => reject(new Error(`the typesetter ended (${code ?? 'killed'})`)));
    const onError = (problem: Error): void => settle(() => reject(problem));
    const timer = setTimeout(() => settle(() => reject(new Error(`it took longer than ${TIMEOUT_MS / 1000} s`))), TIMEOUT_MS);
    child.on('message', onMessage);
    child.on('exit', onExit);
    child.on('error', onError);
    child.send(asked, (problem) => problem && onError(problem));
  });
}
