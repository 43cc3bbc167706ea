import { Module } from '@nestjs/common';
import { AcknowledgeFinding } from './deciding/acknowledge-finding.service.js';
import { AcknowledgeResolver } from './deciding/acknowledge.resolver.js';
import { FindingEvidenceResolver } from './evidence/finding-evidence.field-resolver.js';
import { PrecisionResolver } from './deciding/precision.resolver.js';
import { FindingMoneyResolver, PropertyFindingsResolver, ReadingFindingsResolver } from './finding.field-resolver.js';
import { FindingsWeekResolver, PaceOfPropertyResolver } from './deciding/week/findings-week.resolver.js';
import { FindingResolver } from './finding.resolver.js';
import { OpenFindings } from './opening/open-findings.service.js';
import { SeeOnSite } from './opening/see-on-site.service.js';
import { SettleFinding } from './deciding/settle-finding.service.js';

/** Findings: opened by the accounts, settled by people. */
@Module({
  providers: [
    FindingResolver,
    AcknowledgeResolver,
    PrecisionResolver,
    FindingsWeekResolver,
    PaceOfPropertyResolver,
    FindingEvidenceResolver,
    FindingMoneyResolver,
    PropertyFindingsResolver,
    ReadingFindingsResolver,
    OpenFindings,
    SeeOnSite,
    SettleFinding,
    AcknowledgeFinding,
  ],
  exports: [SettleFinding, SeeOnSite],
})
export class FindingsModule {}
