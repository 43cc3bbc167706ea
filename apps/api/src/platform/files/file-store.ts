import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { Injectable } from '@nestjs/common';

const checkout = path.resolve(import.meta.dirname, '../../../../..');

/** The folder of kept files, beside the database's own. Read anew each time: a test may set it. */
const base = (): string => path.join(path.resolve(process.env['DATA_DIR'] || path.join(checkout, '.data')), 'rillbook-files');

const NAME = /^[0-9a-f]{64}$/;

/** What the bytes are called: their SHA-256. */
export const nameOfBytes = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Files of organizations on the disk, each called by its content: the same bytes are kept once, and what is there is never written over.
 *
 * No part of a path comes from whoever sends: the organization is the session's, the name is computed.
 */
@Injectable()
export class FileStore {
  /** Keeps bytes; when it returns they are on the disk, and half a file never has the name. */
  async put(organizationId: string, bytes: Buffer): Promise<string> {
    const name = nameOfBytes(bytes);
    const place = this.place(organizationId, name);
    if (await this.has(organizationId, name)) return name;
    const folder = path.dirname(place);
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const making = path.join(folder, `making-${randomUUID()}`);
    try {
      const file = await open(making, 'wx', 0o600);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(making, place);
    } catch (problem) {
      await rm(making, { force: true });
      throw problem;
    }
    await syncFolder(folder);
    return name;
  }

  async has(organizationId: string, name: string): Promise<boolean> {
    try {
      return (await stat(this.place(organizationId, name))).isFile();
    } catch (problem) {
      if ((problem as NodeJS.ErrnoException).code === 'ENOENT') return false;
      throw problem;
    }
  }

  /** The bytes as they come from the disk. */
  read(organizationId: string, name: string): Readable {
    return createReadStream(this.place(organizationId, name));
  }

  private place(organizationId: string, name: string): string {
    if (!NAME.test(name)) throw new TypeError(`no name of a kept file: ${name}`);
    return path.join(base(), organizationId, name.slice(0, 2), name);
  }
}

/** The new name itself outlives a power cut only when its folder is on the disk too. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
