import { defineLoader } from '../../../platform/graphql/loader.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { nowOf } from '../../../platform/jobs/clock.js';
import { type PresentAndPlanned, settingsFacts } from './settings.repository.js';

/** What a controller is set to at the organization's now, and the last plan that is not older; one for a later day only where none is due. */
export const presentAndPlanned = defineLoader<string, PresentAndPlanned>(
  async (tx, controllerIds) => settingsFacts.presentAndPlanned(tx, controllerIds, nowOf(await organizations.own(tx))),
  { present: null, planned: null },
);
