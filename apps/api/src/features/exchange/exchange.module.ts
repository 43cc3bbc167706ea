import { Module } from '@nestjs/common';
import { AccountsModule } from '../accounts/accounts.module.js';
import { ExportDeed } from './export/export-deed.service.js';
import { ImportDeed } from './import/import-deed.service.js';

/** Import and export: a company's world in files, in and out. */
@Module({ imports: [AccountsModule], providers: [ImportDeed, ExportDeed], exports: [ImportDeed, ExportDeed] })
export class ExchangeModule {}
