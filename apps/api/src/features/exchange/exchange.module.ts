import { Module } from '@nestjs/common';
import { AccountsModule } from '../accounts/accounts.module.js';
import { ExportController } from './export/export.controller.js';
import { ExportDeed } from './export/export-deed.service.js';
import { ExchangeTransactions } from './import/directory/transactions.repository.js';
import { ImportDeed } from './import/import-deed.service.js';
import { AcceptImport } from './upload/accept-import.service.js';
import { CheckUpload } from './upload/check-upload.service.js';
import { ImportController } from './upload/import.controller.js';
import { ImportJob } from './upload/import.job.js';

/** Import and export: a company's world in files, in and out. */
@Module({
  imports: [AccountsModule],
  controllers: [ImportController, ExportController],
  providers: [ExchangeTransactions, ImportDeed, ExportDeed, CheckUpload, AcceptImport, ImportJob],
  exports: [ImportDeed, ExportDeed],
})
export class ExchangeModule {}
