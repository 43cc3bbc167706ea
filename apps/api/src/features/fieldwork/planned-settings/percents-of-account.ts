import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { accountsOfProperty } from '../../accounts/months/month-account.loader.js';
import type { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { leastChange } from './least-change.js';
import { type KeptSettings, settingsThroughout } from './settings-throughout.js';

/** Each weekday once: fewer days say little about programs that run on some of them (common practice). */
const LEAST_DAYS = 7;
/** What a settings fact can hold, where nobody has said what the controller can. [%] */
const MOST_PERCENT = 1000;

type ControllerRow = NonNullable<Awaited<ReturnType<ReturnType<(typeof controllerOfId)['of']>['load']>>>;

/**
 * The percents that would have met the need of the property's latest account: for a month whose weather nobody knows.
 *
 * @returns null where nothing would change, or it cannot be known
 */
export async function percentsOfAccount(tx: OrganizationTransaction, controller: ControllerRow): Promise<KeptSettings['programs'] | null> {
  const property = await propertyOfId.of(tx).load(controller.propertyId);
  const account = property && (await latestAccount(tx, property.id));
  if (!account) return null;
  const present = await settingsThroughout(tx, controller.id, account.firstDate, property.timeZone);
  if (!present) return null;
  const lines = account.zones.filter((line) => line.controllerId === controller.id);
  return leastChange(present.programs, lines, {
    scope: controller.adjustScope ?? 'program',
    stepPercent: controller.adjustStepPercent,
    maxPercent: controller.maxAdjustPercent ?? MOST_PERCENT,
  });
}

/** The property's latest account that covers enough days. */
async function latestAccount(tx: OrganizationTransaction, propertyId: string) {
  const accounts = (await accountsOfProperty.of(tx).load(propertyId))
    .filter((row) => row.meterId === null)
    .map((row) => row.detail.account);
  return accounts.findLast((account) => account.daysCovered >= LEAST_DAYS) ?? null;
}
