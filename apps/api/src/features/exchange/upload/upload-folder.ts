import { randomUUID } from 'node:crypto';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isUuid } from '../../../platform/records/uuid.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';

const KEPT_FOR_MS = 24 * 60 * 60 * 1000;

/** Where uploads wait to be imported: below the product's data, or below the machine's temporary folder. */
const base = (): string => path.join(process.env['DATA_DIR'] || tmpdir(), 'rillbook-uploads');

/** How the files of refused rows begin. */
export const REJECTED = 'rejected-';

/** One upload's own folder. Every name in it is ours; none comes from whoever uploads. */
export class UploadFolder {
  private constructor(
    readonly importId: string,
    readonly place: string,
  ) {}

  static async make(organizationId: string): Promise<UploadFolder> {
    await sweep();
    const importId = randomUUID();
    const place = path.join(base(), organizationId, importId);
    await mkdir(place, { recursive: true, mode: 0o700 });
    return new UploadFolder(importId, place);
  }

  /** The folder of an upload of this organization; that of another one is not found. */
  static async find(organizationId: string, importId: string): Promise<UploadFolder> {
    if (!isUuid(importId)) throw exchangeProblems.noSuchImport({ importId });
    const place = path.join(base(), organizationId, importId.toLowerCase());
    const found = await stat(place).catch(() => null);
    if (!found?.isDirectory()) throw exchangeProblems.noSuchImport({ importId });
    return new UploadFolder(importId, place);
  }

  /** A file in the folder, by a name of ours. */
  file(name: string): string {
    return path.join(this.place, name);
  }

  /** A file in the folder by a new name that nobody can guess. */
  newFile(): string {
    return this.file(`upload-${randomUUID()}`);
  }

  /** Forgets the rows that an earlier check refused. */
  async forgetRejected(): Promise<void> {
    for (const name of await readdir(this.place)) if (name.startsWith(REJECTED)) await rm(this.file(name), { force: true });
  }

  remove(): Promise<void> {
    return rm(this.place, { recursive: true, force: true });
  }
}

/** Clears uploads away that nobody came back for. */
async function sweep(): Promise<void> {
  const organizations = await readdir(base()).catch(() => []);
  for (const organization of organizations) {
    for (const upload of await readdir(path.join(base(), organization)).catch(() => [])) {
      const place = path.join(base(), organization, upload);
      const found = await stat(place).catch(() => null);
      if (found && Date.now() - found.mtimeMs > KEPT_FOR_MS) await rm(place, { recursive: true, force: true });
    }
  }
}
