import { Injectable } from '@nestjs/common';
import type { Request } from 'express';
import type { Actor } from '../../../platform/database/actor.js';
import type { FileMeaning } from '../files/table-file.js';
import { ImportDeed } from '../import/import-deed.service.js';
import type { ProblemLanguage } from '../problems/problem-sentence.js';
import { receiveUpload } from './receive-upload.js';
import { RejectedRowsFile } from './rejected-rows-file.js';
import { type ShownImport, showImport } from './show-import.js';
import { UploadFolder } from './upload-folder.js';
import { keepRecord, recordOf, sourceOf, type UploadRecord } from './upload-record.js';

/** Takes an upload and checks every row of it, without importing any. */
@Injectable()
export class CheckUpload {
  constructor(private readonly deed: ImportDeed) {}

  async run(by: Actor, request: Request, language: ProblemLanguage): Promise<ShownImport> {
    const folder = await UploadFolder.make(by.organizationId);
    try {
      return await this.check(by, folder, { uploads: await receiveUpload(request, folder), meanings: {} }, language);
    } catch (problem) {
      await folder.remove();
      throw problem;
    }
  }

  /** Checks an upload again, with what was said of its files meanwhile. */
  async again(
    by: Actor,
    importId: string,
    meanings: Readonly<Record<string, FileMeaning>>,
    language: ProblemLanguage,
  ): Promise<ShownImport> {
    const folder = await UploadFolder.find(by.organizationId, importId);
    const { uploads, meanings: before } = await recordOf(folder);
    await folder.forgetRejected();
    return this.check(by, folder, { uploads, meanings: { ...before, ...meanings } }, language);
  }

  private async check(
    by: Actor,
    folder: UploadFolder,
    said: Omit<UploadRecord, 'report'>,
    language: ProblemLanguage,
  ): Promise<ShownImport> {
    const report = await this.deed.run(by, await sourceOf(said), {
      rows: 'none',
      listener: { rejected: (rejectedAs, header, rows) => new RejectedRowsFile(folder, rejectedAs).add(header, rows) },
    });
    await keepRecord(folder, { ...said, report });
    return showImport(folder.importId, report, language);
  }
}
