import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { TakeFile } from './export-deed.service.js';

/**
 * Writes the files of an export into a folder; each takes its name only when it is whole.
 *
 * @param wrote is told of each file and how many rows it has
 */
export function folderSink(folder: string, wrote: (name: string, rows: number) => void): TakeFile {
  return async ({ name, text }) => {
    const target = path.join(folder, name);
    const part = `${target}.part`;
    let lines = 0;
    const counted = async function* (): AsyncGenerator<string> {
      for await (const piece of text) {
        lines += rowsIn(piece);
        yield piece;
      }
    };
    try {
      await pipeline(Readable.from(counted()), createWriteStream(part));
      await rename(part, target);
    } finally {
      await rm(part, { force: true });
    }
    wrote(name, lines - 1);
  };
}

/** Line feeds outside of quotation marks; pieces end where rows end. */
function rowsIn(piece: string): number {
  let rows = 0;
  let quoted = false;
  for (let at = 0; at < piece.length; at += 1) {
    const code = piece.charCodeAt(at);
    if (code === 0x22) quoted = !quoted;
    else if (code === 0x0a && !quoted) rows += 1;
  }
  return rows;
}
