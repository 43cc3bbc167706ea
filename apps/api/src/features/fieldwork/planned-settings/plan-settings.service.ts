import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Offer } from '@rillbook/irrigation/planning/offers/least-change.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Problem } from '../../../platform/problems/problem.js';
import { planAhead, type PlannedMonth, planOfController } from '../../plans/offers/plan-of-controller.service.js';
import { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { RecordSettings } from '../../settings/facts/record-settings.service.js';
import { keepProgram } from '../../settings/programs/keep-program.service.js';
import type { SettingsWishInput } from '../orders/work-order.input.js';
import { nowIn, todayIn } from '../organization-clock.js';
import { percentsOfAccount } from './percents-of-account.js';
import type { KeptSettings } from './settings-throughout.js';

const OFFERS = ['least change', 'full program'];

/** Keeps what a controller is to be set to: one of the two offers of its month's plan. */
@Injectable()
export class PlanSettings {
  constructor(private readonly record: RecordSettings) {}

  /** Plans before anything is written; what is kept later is planned from what then holds. */
  async ahead(tx: OrganizationTransaction, controllerId: string, wish: SettingsWishInput | null): Promise<void> {
    const controller = await controllerOfId.of(tx).load(controllerId);
    if (controller) await planAhead(tx, [controller], await monthOf(tx, wish));
  }

  /**
   * The least change where none is wished, or the full program where there is none; where nobody knows the month's weather, the percents that
   * would have met the latest account's need.
   *
   * @returns the id of the planned settings; null where nothing would change, or it cannot be known
   */
  async run(tx: OrganizationTransaction, controllerId: string, wish: SettingsWishInput | null): Promise<string | null> {
    const controller = await controllerOfId.of(tx).load(controllerId);
    if (!controller) return null;
    const planned = await planOfController(tx, controller, await monthOf(tx, wish));
    const offer = offerOf(planned, wish);
    if (offer) return offer.kind === 'as set' ? null : this.keep(tx, controllerId, offer.programs.map(keepProgram));
    if (planned.gathered.reason?.code !== 'NO_WEATHER') return null;
    const programs = await percentsOfAccount(tx, controller);
    return programs && this.keep(tx, controllerId, programs);
  }

  private async keep(tx: OrganizationTransaction, controllerId: string, programs: KeptSettings['programs']): Promise<string | null> {
    const input = {
      deviceRecordId: randomUUID(),
      controllerId,
      effectiveAt: await nowIn(tx),
      record: 'planned',
      state: programs.length ? 'on' : 'off',
      programs: programs.map(asInput),
    };
    try {
      const { outcome, kept } = await this.record.run(tx, input);
      presentAndPlanned.of(tx).clear(controllerId);
      return outcome === 'kept' ? kept.id : null;
    } catch (problem) {
      // What was read off the controller is more than its record says it can hold: the record is to be mended, nothing can be planned on it.
      if (problem instanceof Problem && problem.code === platformProblems.valueRefused.code) return null;
      throw problem;
    }
  }
}

/** The month that is wished, else the one that is under way. */
async function monthOf(tx: OrganizationTransaction, wish: SettingsWishInput | null): Promise<string> {
  if (wish && !OFFERS.includes(wish.offer))
    throw platformProblems.valueRefused({ field: 'settings.offer', found: wish.offer, expected: `one of ${OFFERS.join(', ')}` });
  return wish?.month ?? (await todayIn(tx)).slice(0, 7);
}

/** Where nothing is known of what is set, nothing is replaced unless the full program is wished. */
function offerOf({ plan, gathered }: PlannedMonth, wish: SettingsWishInput | null): Offer | null {
  if (wish?.offer === 'full program') {
    if (plan) return plan.full;
    const expected = `an offer of ${wish.month}, which has no plan: ${gathered.reason!.code}`;
    throw platformProblems.valueRefused({ field: 'settings.offer', found: wish.offer, expected });
  }
  return plan?.leastChange ?? (plan?.present ? plan.full : null);
}

const asInput = (program: KeptSettings['programs'][number]) => ({
  ...program,
  starts: [...program.starts],
  stations: [...program.stations],
});
