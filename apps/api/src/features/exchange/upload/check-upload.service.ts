import { Injectable } from '@nestjs/common';
import type { Request } from 'express';
import type { Actor } from '../../../platform/database/actor.js';
import { uploadedFiles } from '../files/uploaded-files.js';
import { ImportDeed } from '../import/import-deed.service.js';
import type { ProblemLanguage } from '../problems/problem-sentence.js';
import { receiveUpload } from './receive-upload.js';
import { RejectedRowsFile } from './rejected-rows-file.js';
import { type ShownImport, showImport } from './show-import.js';
import { UploadFolder } from './upload-folder.js';
import { keepRecord } from './upload-record.js';

/** Takes an upload and checks every row of it, without importing any. */
@Injectable()
export class CheckUpload {
  constructor(private readonly deed: ImportDeed) {}

  async run(by: Actor, request: Request, language: ProblemLanguage): Promise<ShownImport> {
    const folder = await UploadFolder.make(by.organizationId);
    try {
      const uploads = await receiveUpload(request, folder);
      const report = await this.deed.run(by, await uploadedFiles(uploads), {
        rows: 'none',
        listener: { rejected: (file, header, rows) => new RejectedRowsFile(folder, file).add(header, rows) },
      });
      await keepRecord(folder, { uploads, report });
      return showImport(folder.importId, report, language);
    } catch (problem) {
      await folder.remove();
      throw problem;
    }
  }
}
