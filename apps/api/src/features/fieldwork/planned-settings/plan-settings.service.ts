import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Problem } from '../../../platform/problems/problem.js';
import { accountsOfProperty } from '../../accounts/months/month-account.loader.js';
import { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { RecordSettings } from '../../settings/facts/record-settings.service.js';
import { nowIn } from '../organization-clock.js';
import { leastChange } from './least-change.js';
import { type KeptSettings, settingsThroughout } from './settings-throughout.js';

/** Each weekday once: fewer days say little about programs that run on some of them (common practice). */
const LEAST_DAYS = 7;
/** What a settings fact can hold, where nobody has said what the controller can. [%] */
const MOST_PERCENT = 1000;

/** Plans the least change of a controller from its property's latest account: the percents that would have met the need. */
@Injectable()
export class PlanSettings {
  constructor(private readonly record: RecordSettings) {}

  /** @returns the id of the planned settings; null where nothing would change, or it cannot be known */
  async run(tx: OrganizationTransaction, controllerId: string): Promise<string | null> {
    const controller = await controllerOfId.of(tx).load(controllerId);
    const property = controller && (await propertyOfId.of(tx).load(controller.propertyId));
    const account = property && (await latestAccount(tx, property.id));
    if (!account) return null;
    const present = await settingsThroughout(tx, controllerId, account.firstDate, property.timeZone);
    if (!present) return null;
    const lines = account.zones.filter((line) => line.controllerId === controllerId);
    const programs = leastChange(present.programs, lines, {
      scope: controller.adjustScope ?? 'program',
      stepPercent: controller.adjustStepPercent,
      maxPercent: controller.maxAdjustPercent ?? MOST_PERCENT,
    });
    return programs && this.keep(tx, controllerId, programs);
  }

  private async keep(tx: OrganizationTransaction, controllerId: string, programs: KeptSettings['programs']): Promise<string | null> {
    const effectiveAt = await nowIn(tx);
    const input = {
      deviceRecordId: randomUUID(),
      controllerId,
      effectiveAt,
      record: 'planned',
      state: 'on',
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

const asInput = (program: KeptSettings['programs'][number]) => ({
  ...program,
  starts: [...program.starts],
  stations: [...program.stations],
});

/** The property's latest account that covers enough days. */
async function latestAccount(tx: OrganizationTransaction, propertyId: string) {
  const accounts = (await accountsOfProperty.of(tx).load(propertyId))
    .filter((row) => row.meterId === null)
    .map((row) => row.detail.account);
  return accounts.findLast((account) => account.daysCovered >= LEAST_DAYS) ?? null;
}
