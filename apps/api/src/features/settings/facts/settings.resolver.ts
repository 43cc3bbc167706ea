import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { timeZoneOfController } from '../time-zone-of-controller.js';
import { wallTime } from '../wall-time.js';
import { RecordSettings } from './record-settings.service.js';
import { RecordSettingsResult, type SettingsConflict, settingsConflict } from './record-settings-result.type.js';
import { SettingsInput } from './settings.input.js';
import { Settings, showSettings } from './settings.type.js';

/** Settings: kept once, as found, as left or as planned. */
@Resolver(() => Settings)
export class SettingsResolver {
  constructor(private readonly record: RecordSettings) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => RecordSettingsResult)
  async recordSettings(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => SettingsInput }) input: SettingsInput,
  ): Promise<Settings | SettingsConflict> {
    const { outcome, kept } = await this.record.run(tx, input);
    const shown = showSettings(kept);
    return outcome === 'kept' ? shown : settingsConflict(shown);
  }

  /** On the property's clock. */
  @ResolveField(() => String)
  async localTime(@Tx() tx: OrganizationTransaction, @Parent() settings: Settings): Promise<string> {
    return wallTime(settings.effectiveAt, await timeZoneOfController(tx, settings.controllerId));
  }

  @ResolveField(() => String, { nullable: true })
  recordedBy(@Tx() tx: OrganizationTransaction, @Parent() settings: Settings): Promise<string | null> | null {
    return settings.personId ? personNameOfId.of(tx).load(settings.personId) : null;
  }
}
