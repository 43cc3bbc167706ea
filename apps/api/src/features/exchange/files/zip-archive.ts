import { crc32 } from 'node:zlib';
import yauzl from 'yauzl';
import { FileRefusal } from './table-file.js';

/** How much an archive may hold. A folder of a million rows is about a tenth of the bytes; real CSV packs ten to thirty times. */
export const ZIP_LIMITS = { entries: 200, unpackedBytes: 1024 ** 3, ratio: 200, ratioCountsFromBytes: 1024 ** 2 } as const;

/** A file within an archive, checked by what the archive's directory says of it. */
export interface ArchivedFile {
  readonly path: string;
  readonly bytes: number;
  readonly open: () => AsyncIterable<Buffer>;
}

/** An entry as the archive's directory has it; the name is bytes until it is judged. */
type Entry = Omit<yauzl.Entry, 'fileName'> & { readonly fileName: unknown };

/**
 * Reads the directory of an archive, refusing what no honest import holds: too many entries, too large or too dense,
 * locked, links, paths that lead elsewhere, archives within. The bytes are checked again as they are unpacked.
 */
export async function zipArchive(path: string): Promise<readonly ArchivedFile[]> {
  const zip = await openZip(path);
  try {
    if (zip.entryCount > ZIP_LIMITS.entries)
      throw new FileRefusal('ZIP_TOO_MANY_ENTRIES', { found: String(zip.entryCount), expected: String(ZIP_LIMITS.entries) });
    const files: ArchivedFile[] = [];
    let total = 0;
    for (const entry of await entriesOf(zip)) {
      const name = checkedName(entry);
      checkEntry(entry, name);
      total += entry.uncompressedSize;
      if (total > ZIP_LIMITS.unpackedBytes) throw new FileRefusal('ZIP_TOO_LARGE', { expected: megabytes(ZIP_LIMITS.unpackedBytes) });
      if (!name.endsWith('/')) files.push({ path: name, bytes: entry.uncompressedSize, open: () => unpacked(path, entry as yauzl.Entry) });
    }
    return files;
  } finally {
    zip.close();
  }
}

function openZip(path: string): Promise<yauzl.ZipFile> {
  return new Promise((resolve, reject) => {
    yauzl.open(path, { lazyEntries: true, autoClose: false, decodeStrings: false }, (error, zip) => {
      if (error) reject(damaged(error));
      else resolve(zip);
    });
  });
}

function entriesOf(zip: yauzl.ZipFile): Promise<readonly Entry[]> {
  return new Promise((resolve, reject) => {
    const entries: Entry[] = [];
    zip.on('entry', (entry: Entry) => {
      entries.push(entry);
      zip.readEntry();
    });
    zip.once('end', () => resolve(entries));
    zip.once('error', (error: Error) => reject(damaged(error)));
    zip.readEntry();
  });
}

function checkedName(entry: Entry): string {
  const name = Buffer.isBuffer(entry.fileName) ? entry.fileName.toString('utf8') : String(entry.fileName);
  if (name.includes('\0') || yauzl.validateFileName(name) !== null) throw new FileRefusal('ZIP_PATH', { found: name });
  return name;
}

const UNIX_KIND = 0o170000;
const UNIX_LINK = 0o120000;
const LOCKED_FLAGS = 0x0041; // encrypted, strongly encrypted

function checkEntry(entry: Entry, name: string): void {
  if ((entry.generalPurposeBitFlag & LOCKED_FLAGS) !== 0) throw new FileRefusal('ZIP_ENCRYPTED', { found: name });
  if (((entry.externalFileAttributes >>> 16) & UNIX_KIND) === UNIX_LINK) throw new FileRefusal('ZIP_SYMLINK', { found: name });
  if (/\.(zip|7z|rar|gz|bz2|xz|tar|tgz)$/i.test(name)) throw new FileRefusal('ZIP_NESTED', { found: name });
  const dense =
    entry.uncompressedSize > ZIP_LIMITS.ratioCountsFromBytes && entry.uncompressedSize > entry.compressedSize * ZIP_LIMITS.ratio;
  if (dense) throw new FileRefusal('ZIP_RATIO', { found: name, expected: String(ZIP_LIMITS.ratio) });
}

/** The bytes of an entry; more or fewer than the directory says, or a wrong checksum, is damage. */
async function* unpacked(path: string, entry: yauzl.Entry): AsyncGenerator<Buffer> {
  const zip = await openZip(path);
  let checksum = 0;
  try {
    const stream = await new Promise<AsyncIterable<Buffer>>((resolve, reject) => {
      zip.openReadStream(entry, (error, opened) => (error ? reject(error) : resolve(opened)));
    });
    for await (const chunk of stream) {
      checksum = crc32(chunk, checksum);
      yield chunk;
    }
  } catch (error) {
    throw error instanceof FileRefusal ? error : damaged(error);
  } finally {
    zip.close();
  }
  if (checksum !== entry.crc32) throw new FileRefusal('ZIP_DAMAGED');
}

/** What the unpacker says helps nobody who uploads: it is the cause, and not what was found. */
function damaged(cause: unknown): FileRefusal {
  const refusal = new FileRefusal('ZIP_DAMAGED');
  refusal.cause = cause;
  return refusal;
}

/** A limit in whole megabytes, for a sentence. */
export function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1024 ** 2)} MB`;
}
