import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { careChoices } from '@rillbook/irrigation/planning/demand/care-choices.js';
import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';
import type { ControllerPlan as LibraryPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { plantingsOfZone } from '../../portfolio/plantings/plantings-of-zone.loader.js';
import { CareChoice, ZoneChoices } from './zone-choices.type.js';

const WHOLE_COVER = 100;
const WARM_TURF = 'turf warm-season';

/** Zones whose plants do not fit together: what each choice would give them in the month, and minutes beside those of the full program. */
export async function choicesOfPlan(
  tx: OrganizationTransaction,
  input: PlanInput,
  accountZones: ReadonlyMap<string, AccountZone>,
  { full }: LibraryPlan,
): Promise<ZoneChoices[]> {
  const { days } = daysOfMonth(input.month);
  const found: ZoneChoices[] = [];
  for (const { zoneId, station, plants, needLitresPerDay } of input.zones) {
    const zone = accountZones.get(zoneId);
    const plantings = await plantingsOfZone.of(tx).load(zoneId);
    const even = WHOLE_COVER / Math.max(1, plantings.length);
    if (!zone) continue;
    const lasting = zone.density * zone.shade;
    // Of a known category only warm-season turf has a factor of its own.
    const ownTurf = plants === WARM_TURF ? plants : null;
    const growing = plantings.flatMap(({ waterNeed, coverPercent }) =>
      waterNeed === null ? [] : [{ cover: coverPercent ?? even, plantFactor: plantFactor(null, waterNeed, ownTurf).plantFactor * lasting }],
    );
    const choices = careChoices(growing, needLitresPerDay, zone.plantFactor * lasting);
    if (!choices) continue;
    const minutes = full.programs
      .flatMap(({ stations }) => stations)
      .reduce((sum, run) => (run.station === station ? sum + run.minutes : sum), 0);
    found.push(
      Object.assign(new ZoneChoices(), {
        ...{ zoneId, station },
        choices: choices.map(({ choice, litresPerDay }) =>
          Object.assign(new CareChoice(), {
            choice,
            neededLitres: litresPerDay * days,
            minutes: needLitresPerDay > 0 && minutes > 0 ? (minutes * litresPerDay) / needLitresPerDay : null,
          }),
        ),
      }),
    );
  }
  return found;
}
