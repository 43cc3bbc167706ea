import { Module } from '@nestjs/common';
import { OrdinanceYearResolver } from './allowances/ordinance-year.field-resolver.js';
import { MeterAccountsResolver, PropertyAccountsResolver } from './months/property-accounts.field-resolver.js';
import { UncertaintyShareResolver } from './months/uncertainty-share.field-resolver.js';
import { WhatIfResolver } from './months/what-if.field-resolver.js';
import { InferredSettingsResolver } from './strip/inferred-settings.field-resolver.js';
import { RecomputeJob } from './recompute/recompute.job.js';
import { RecomputeProperties } from './recompute/recompute-properties.service.js';
import { RecomputeResolver } from './recompute/recompute.resolver.js';
import { TouchAccounts } from './recompute/touch-accounts.service.js';

/** The month accounts: computed from what is on record, kept with the version of their inputs. */
@Module({
  providers: [
    RecomputeProperties,
    RecomputeJob,
    RecomputeResolver,
    TouchAccounts,
    PropertyAccountsResolver,
    MeterAccountsResolver,
    UncertaintyShareResolver,
    WhatIfResolver,
    OrdinanceYearResolver,
    InferredSettingsResolver,
  ],
  exports: [TouchAccounts],
})
export class AccountsModule {}
