import { Body, Controller, Delete, Get, HttpCode, Param, Post, Res, UseGuards } from '@nestjs/common';
import type { Response } from 'express';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope, Tx } from '../../../platform/identity/tx.js';
import { recognizeFile } from '../columns/import-files.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import { rejectedCsv } from '../rows/rejected-rows.js';
import { AcceptImport } from './accept-import.service.js';
import { CheckUpload } from './check-upload.service.js';
import { FromOurPages } from './from-our-pages.guard.js';
import { importJobOf } from './import-jobs.repository.js';
import { languageOf } from './person-language.repository.js';
import { meaningsIn } from '../layouts/meanings-in.js';
import { RejectedRowsFile } from './rejected-rows-file.js';
import { type ShownImport, showImport } from './show-import.js';
import { UploadFolder } from './upload-folder.js';
import { recordOf } from './upload-record.js';

/** A file of the import, and a number where several files give rows of its kind. */
const REJECTED_AS = /^[a-z]{1,20}(?:-\d{1,3})?$/;

function isInput(rejectedAs: string): boolean {
  if (!REJECTED_AS.test(rejectedAs)) return false;
  const file = recognizeFile(rejectedAs.replace(/-\d+$/, ''));
  return file !== null && file !== 'output';
}

/** Uploads of import files: checked first, imported when accepted. */
@Controller('api/imports')
@UseGuards(FromOurPages)
export class ImportController {
  constructor(
    private readonly check: CheckUpload,
    private readonly acceptImport: AcceptImport,
  ) {}

  /** Takes files (multipart/form-data) and checks every row. Nothing is imported yet. */
  @Allow(Permission.Exchange)
  @Post()
  async upload(@Scope() scope: RequestScope): Promise<ShownImport> {
    const actor = scope.actor!;
    const language = await languageOf(await scope.open(), actor.personId);
    // The files may come slowly: no transaction waits for them.
    await scope.become(actor);
    return this.check.run(actor, scope.request, language);
  }

  @Allow(Permission.Exchange)
  @Get(':id')
  async one(@Scope() scope: RequestScope, @Param('id') id: string): Promise<ShownImport> {
    const { organizationId, personId } = scope.actor!;
    const { report } = await recordOf(await UploadFolder.find(organizationId, id));
    return showImport(id, report, await languageOf(await scope.open(), personId));
  }

  /** Says whose files they are that cannot say it themselves, and checks every row again. */
  @Allow(Permission.Exchange)
  @Post(':id/meanings')
  @HttpCode(200)
  async mean(@Scope() scope: RequestScope, @Param('id') id: string, @Body() body: unknown): Promise<ShownImport> {
    const actor = scope.actor!;
    const tx = await scope.open();
    const language = await languageOf(tx, actor.personId);
    if (await importJobOf(tx, id)) throw exchangeProblems.importUnderWay({});
    await scope.become(actor);
    return this.check.again(actor, id, meaningsIn(body), language);
  }

  /** Starts the import of all rows or none, or of the good rows, in the background. */
  @Allow(Permission.Exchange)
  @Post(':id/accept')
  @HttpCode(202)
  async accept(@Tx() tx: OrganizationTransaction, @Param('id') id: string, @Body() body: unknown): Promise<{ jobId: string }> {
    return { jobId: await this.acceptImport.run(tx, id, body, await languageOf(tx, tx.actor.personId)) };
  }

  /** The refused rows of a file, with a column that says what to mend; the mended file can be uploaded as it is. */
  @Allow(Permission.Exchange)
  @Get(':id/rejected/:file')
  async rejected(
    @Scope() scope: RequestScope,
    @Param('id') id: string,
    @Param('file') wished: string,
    @Res() response: Response,
  ): Promise<void> {
    const { organizationId, personId } = scope.actor!;
    const folder = await UploadFolder.find(organizationId, id);
    const rejectedAs = wished.replace(/\.csv$/, '');
    const rejected = isInput(rejectedAs) ? new RejectedRowsFile(folder, rejectedAs) : null;
    if (!rejected || !(await rejected.isThere())) throw exchangeProblems.nothingRejected({ file: wished });
    const { header, rows } = await rejected.read();
    const language = await languageOf(await scope.open(), personId);
    // The file may be taken slowly: no transaction waits for it.
    await scope.become(scope.actor);
    response.setHeader('Content-Type', 'text/csv; charset=utf-8');
    response.setHeader('Content-Disposition', `attachment; filename="${rejectedAs}.csv"`);
    response.setHeader('Cache-Control', 'no-store');
    await pipeline(Readable.from(rejectedCsv(header, rows, language)), response);
  }

  /** Forgets an upload that is not being imported. */
  @Allow(Permission.Exchange)
  @Delete(':id')
  @HttpCode(204)
  async remove(@Tx() tx: OrganizationTransaction, @Param('id') id: string): Promise<void> {
    const folder = await UploadFolder.find(tx.organizationId, id);
    const job = await importJobOf(tx, id);
    if (job && job.state !== 'done') throw exchangeProblems.importUnderWay({});
    await folder.remove();
  }
}
