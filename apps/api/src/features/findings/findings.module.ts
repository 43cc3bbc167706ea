import { Module } from '@nestjs/common';
import { PropertyFindingsResolver, ReadingFindingsResolver } from './finding.field-resolver.js';
import { FindingResolver } from './finding.resolver.js';
import { OpenFindings } from './opening/open-findings.service.js';
import { SettleFinding } from './settle-finding.service.js';

/** Findings: opened by the accounts, settled by people. */
@Module({
  providers: [FindingResolver, PropertyFindingsResolver, ReadingFindingsResolver, OpenFindings, SettleFinding],
  exports: [SettleFinding],
})
export class FindingsModule {}
