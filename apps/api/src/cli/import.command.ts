import { randomUUID } from 'node:crypto';
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { metresFromFeet } from '@rillbook/units/length.js';
import { folderFiles } from '../features/exchange/files/folder-files.js';
import { type FileMeaning, type ImportSource, withMeaning } from '../features/exchange/files/table-file.js';
import { recognizeTable } from '../features/exchange/layouts/recognize-table.js';
import { uploadedFiles } from '../features/exchange/files/uploaded-files.js';
import { ImportDeed } from '../features/exchange/import/import-deed.service.js';
import type { FileReport, ImportListener, ImportReport } from '../features/exchange/import/import-report.js';
import { problemSentence } from '../features/exchange/problems/problem-sentence.js';
import { organizationActor } from '../platform/database/actor.js';
import { organizations } from '../platform/identity/organizations/organization.repository.js';
import { Jobs } from '../platform/jobs/jobs.js';
import { type Command, type ExitCode, UsageProblem } from './command.js';
import { folderWords, organizationMeant } from './folder-words.js';
import { type OpenProduct, withProduct } from './open-product.js';
import { ProgressLine } from './progress-line.js';
import { settleQueue } from '../platform/jobs/settle-queue.js';

type Flag = 'dry-run' | 'good-rows';
type Text = 'station' | 'wind-height' | 'property' | 'meter';
type Words = ReturnType<typeof folderWords<Flag, Text>>;

const count = (value: number): string => value.toLocaleString('en-US');

/** Imports a folder (or a .zip) of CSV files from the command line, and computes what follows from it. */
export const importFolder: Command = {
  name: 'import',
  summary:
    'Imports a folder of CSV files, or one file: all rows or nothing, or with --good-rows the good ones. A new organization is made. ' +
    'A file of a weather station needs --station (and --wind-height, such as 3m or 10ft), a meter feed --property and --meter.',
  usage: 'FOLDER [--organization NAME] [--dry-run] [--good-rows] [--station NAME] [--wind-height HEIGHT] [--property NAME] [--meter NAME]',
  async run(words) {
    const read = folderWords<Flag, Text>(words, ['dry-run', 'good-rows'], ['station', 'wind-height', 'property', 'meter']);
    meaningOf(read);
    return withProduct<ExitCode>((product) => runImport(product, read));
  },
};

async function runImport(product: OpenProduct, words: Words): Promise<ExitCode> {
  const { app, database } = product;
  const present = await organizationMeant(database.adminUrl, words.organization);
  const organizationId = present?.id ?? randomUUID();
  const line = new ProgressLine();
  const report = await app.get(ImportDeed).run(organizationActor(organizationId, 'import'), await sourceOf(words), {
    rows: wished(words),
    ...(!present && { begin: (tx) => organizations.add(tx, words.organization!) }),
    listener: listener(line),
  });
  line.end();
  print(report, words, present === null);
  if (report.written) return (await compute(product, organizationId, line)) ? 0 : 1;
  return report.problemsTotal === 0 ? 0 : 1;
}

function wished({ flags }: Words): 'all' | 'good' | 'none' {
  if (flags['dry-run']) return 'none';
  return flags['good-rows'] ? 'good' : 'all';
}

async function sourceOf(words: Words): Promise<ImportSource> {
  const { folder: place } = words;
  const found = await stat(place).catch(() => null);
  if (!found) throw new UsageProblem(`There is no folder ${place}.`);
  const source = found.isDirectory() ? await folderFiles(place) : await uploadedFiles([{ name: path.basename(place), path: place }]);
  await refuseUnusedWords(source, words);
  return withMeaning(source, () => meaningOf(words));
}

/** An option that no file has a use for is a mistake, in the option or in the folder: nothing is imported past it. */
async function refuseUnusedWords(source: ImportSource, { texts, folder: place }: Words): Promise<void> {
  const ofStation = (['station', 'wind-height'] as const).find((name) => texts[name] !== null);
  const ofMeter = (['property', 'meter'] as const).find((name) => texts[name] !== null);
  if (!ofStation && !ofMeter) return;
  const kinds = new Set((await Promise.all(source.tables.map(recognizeTable))).map((recognized) => recognized?.among));
  if (ofStation && !kinds.has('weather'))
    throw new UsageProblem(
      `--${ofStation}: ${place} holds no file in a layout of a weather station, so there is nothing to use it for. Name the station's file, or leave it out; weather.csv names its stations itself.`,
    );
  if (ofMeter && !kinds.has('usage'))
    throw new UsageProblem(
      `--${ofMeter}: ${place} holds no meter feed, so there is nothing to use it for. Name the feed's file, or leave it out.`,
    );
}

/** What the options say of files that cannot say it themselves. */
function meaningOf({ texts }: Words): FileMeaning {
  const { station, property, meter } = texts;
  const height = texts['wind-height'];
  return {
    ...(station !== null && { station }),
    ...(property !== null && { property }),
    ...(meter !== null && { meter }),
    ...(height !== null && { windHeightM: heightM(height) }),
  };
}

const HEIGHT = /^(\d{1,3}(?:\.\d+)?) ?(m|ft)$/;

function heightM(text: string): number {
  const match = HEIGHT.exec(text);
  const value = Number(match?.[1] ?? 0);
  if (!match || value === 0) throw new UsageProblem(`--wind-height: found "${text}", expected a height with its unit, such as 3m or 10ft.`);
  return match[2] === 'ft' ? metresFromFeet(value) : value;
}

function listener(line: ProgressLine): ImportListener {
  return {
    progress: (file, done, total) => line.show(`${file}.csv: ${count(done)} of ${count(total)} rows`),
    problem: (problem) => {
      line.end();
      console.log(problemSentence(problem, 'en'));
    },
  };
}

function print(report: ImportReport, { flags, organization }: Words, isNew: boolean): void {
  for (const problem of report.ignored) console.log(problemSentence(problem, 'en'));
  for (const file of report.files) printFile(file);
  if (report.written) {
    if (isNew) console.log(`The organization "${organization}" is new; it was made.`);
    console.log(report.problemsTotal ? 'The good rows were imported; the wrong ones were not.' : 'Everything was imported.');
  } else if (flags['dry-run']) console.log('Nothing was written: this was a dry run.');
  else console.log('Nothing was written. Mend the rows above, or import the good ones with --good-rows.');
}

function printFile(file: FileReport): void {
  for (const notice of file.notices) console.log(`Note: ${problemSentence(notice, 'en')}`);
  const more = file.noticesTotal - file.notices.length;
  if (more > 0) console.log(`Note: ${file.name}: ${count(more)} more notes.`);
  if (file.status === 'refused') console.log(`${file.name}: refused`);
  else
    console.log(
      `${file.name}: ${count(file.new)} new, ${count(file.changed)} changed, ${count(file.same)} same, ${count(file.wrong)} wrong`,
    );
}

/** Computes what follows from the rows; whether all of it could be. */
async function compute({ app, source, database }: OpenProduct, organizationId: string, line: ProgressLine): Promise<boolean> {
  const queue = { source, adminUrl: database.adminUrl, jobs: app.get(Jobs) };
  const ended = await settleQueue(queue, organizationId, ({ done, total }) => {
    line.show(`Computing accounts: ${count(done)} of ${count(total)} properties`);
  });
  line.end();
  for (const { says } of ended) console.log(says);
  return ended.every(({ isDone }) => isDone);
}
