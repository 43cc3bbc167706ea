import { once } from 'node:events';
import type { Writable } from 'node:stream';
import { Zip, ZipDeflate } from 'fflate';
import type { TakeFile } from './export-deed.service.js';

const NOTHING = new Uint8Array(0);

/** Writes the files of an export as one archive while they are read, at the pace at which it is taken. */
export class ZipSink {
  private readonly zip: Zip;
  private failed: Error | null = null;

  constructor(private readonly out: Writable) {
    this.zip = new Zip((error, piece) => {
      if (error) this.failed = error;
      else out.write(piece);
    });
  }

  readonly take: TakeFile = async ({ name, text }) => {
    const entry = new ZipDeflate(name, { level: 6 });
    this.zip.add(entry);
    const bytes = new TextEncoder();
    for await (const piece of text) {
      entry.push(bytes.encode(piece));
      await this.taken();
    }
    entry.push(NOTHING, true);
    await this.taken();
  };

  async end(): Promise<void> {
    this.zip.end();
    await this.taken();
    this.out.end();
  }

  /** Waits until the other side has taken what it was given; fails when it has gone. */
  private async taken(): Promise<void> {
    if (this.failed) throw this.failed;
    if (this.out.destroyed) throw new Error('the other side closed the connection');
    if (this.out.writableNeedDrain) await Promise.race([once(this.out, 'drain'), once(this.out, 'close')]);
  }
}
