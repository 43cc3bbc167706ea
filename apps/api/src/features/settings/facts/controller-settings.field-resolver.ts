import { Args, Int, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { newestSettings, newestSettingsKey } from './newest-settings.loader.js';
import { presentAndPlanned } from './present-and-planned.loader.js';
import type { SettingsRow } from './settings.entity.js';
import { Settings, showSettings } from './settings.type.js';

const MOST = 500;

/** What a controller was, is and is planned to be set to. */
@Resolver(() => Controller)
export class ControllerSettingsResolver {
  /** Newest first. */
  @ResolveField(() => [Settings])
  async settings(
    @Tx() tx: OrganizationTransaction,
    @Parent() controller: Controller,
    @Args('first', { type: () => Int, defaultValue: 24 }) first: number,
  ): Promise<Settings[]> {
    if (first < 1 || first > MOST) throw platformProblems.valueRefused({ field: 'first', found: first, expected: `1 to ${MOST}` });
    return (await newestSettings.of(tx).load(newestSettingsKey(controller.id, first))).map(showSettings);
  }

  @ResolveField(() => Settings, { nullable: true })
  async presentSettings(@Tx() tx: OrganizationTransaction, @Parent() controller: Controller): Promise<Settings | null> {
    return shown((await presentAndPlanned.of(tx).load(controller.id)).present);
  }

  @ResolveField(() => Settings, { nullable: true })
  async plannedSettings(@Tx() tx: OrganizationTransaction, @Parent() controller: Controller): Promise<Settings | null> {
    return shown((await presentAndPlanned.of(tx).load(controller.id)).planned);
  }
}

const shown = (row: SettingsRow | null): Settings | null => (row ? showSettings(row) : null);
