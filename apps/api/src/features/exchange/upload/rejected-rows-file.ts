import { createReadStream } from 'node:fs';
import { appendFile, stat } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import type { RejectedRow } from '../rows/imported-row.js';
import { REJECTED, type UploadFolder } from './upload-folder.js';

/** The refused rows of one file of an upload, a row a line: the first line is the file's header. */
export class RejectedRowsFile {
  private readonly place: string;

  /**
   * @param rejectedAs the name under which the import keeps the file's refused rows
   */
  constructor(folder: UploadFolder, rejectedAs: string) {
    this.place = folder.file(`${REJECTED}${rejectedAs}.jsonl`);
  }

  async isThere(): Promise<boolean> {
    return (await stat(this.place).catch(() => null)) !== null;
  }

  async add(header: readonly string[], rows: readonly RejectedRow[]): Promise<void> {
    const lines = (await this.isThere()) ? rows : [header, ...rows];
    await appendFile(this.place, lines.map((line) => `${JSON.stringify(line)}\n`).join(''), { mode: 0o600 });
  }

  async read(): Promise<{ readonly header: readonly string[]; readonly rows: AsyncGenerator<RejectedRow> }> {
    const lines = createInterface({ input: createReadStream(this.place), crlfDelay: Number.POSITIVE_INFINITY })[Symbol.asyncIterator]();
    const first = await lines.next();
    return { header: JSON.parse(first.value as string) as string[], rows: rest(lines) };
  }
}

async function* rest(lines: AsyncIterator<string>): AsyncGenerator<RejectedRow> {
  for (let line = await lines.next(); !line.done; line = await lines.next()) yield JSON.parse(line.value) as RejectedRow;
}
