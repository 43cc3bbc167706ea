import { HIGHEST_DENSITY } from '@rillbook/agronomy/plants/density-factor.js';
import { HIGHEST_PLANT_FACTOR } from '@rillbook/agronomy/plants/plant-factor.js';
import { DEEPEST_ROOTS } from '@rillbook/agronomy/plants/root-depth.js';
import { plantsWords, sunWords, waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { soilTextures } from '@rillbook/agronomy/soil/soil-texture.js';
import { irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { above, between, judgeValues, name, oneOf, shareBelowOne } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { controllerOfId } from '../controllers/controller.loader.js';
import { meterOfId } from '../meters/meter.loader.js';
import { flowSources } from './flow-source.js';
import type { ZoneInput } from './zone.input.js';
import { zones } from './zone.repository.js';

/** A line that takes longer is broken, or not a zone's. */
const LONGEST_FILLING = 60;

const RULES = {
  name: name(),
  station: between(1, 500),
  areaM2: above(0, 1e7, 'm²'),
  plants: oneOf(...plantsWords),
  waterNeed: oneOf(...waterNeeds),
  plantFactor: between(0, HIGHEST_PLANT_FACTOR),
  method: oneOf(...irrigationMethods),
  precipMmPerH: above(0, 1300, 'mm/h'),
  flowLPerMin: above(0, 40_000, 'L/min'),
  flowSource: oneOf(...flowSources),
  handLPerWeek: between(0, 4e7, 'L a week'),
  duLq: above(0, 1),
  soil: oneOf(...soilTextures),
  slopePercent: between(0, 300, '%'),
  fillMinutes: between(0, LONGEST_FILLING, 'min'),
  sun: oneOf(...sunWords),
  density: above(0, HIGHEST_DENSITY),
  rootDepthMm: above(0, DEEPEST_ROOTS, 'mm'),
  mulchMm: between(0, 1000, 'mm'),
  leachingFraction: shareBelowOne,
};

const refuse = platformProblems.valueRefused;

/** Refuses a zone that cannot be: words, ranges, its controller's stations, its meter, both on its own property. */
export async function judgeZone(tx: OrganizationTransaction, input: ZoneInput, id: string | null): Promise<void> {
  judgeValues(input, RULES);
  await requireInUse(tx, 'property', input.propertyId);
  await judgeStation(tx, input, id);
  await judgeMeter(tx, input);
}

async function judgeStation(tx: OrganizationTransaction, input: ZoneInput, id: string | null): Promise<void> {
  const { controllerId, station } = input;
  if (controllerId && station) return judgeStationOf(tx, { ...input, controllerId, station }, id);
  if (station) throw refuse({ field: 'controllerId', found: null, expected: 'a controller together with its station, or neither' });
  if (controllerId) throw refuse({ field: 'station', found: null, expected: 'a station together with its controller, or neither' });
}

async function judgeStationOf(
  tx: OrganizationTransaction,
  input: { propertyId: string; controllerId: string; station: number },
  id: string | null,
): Promise<void> {
  const { controllerId, station } = input;
  await requireInUse(tx, 'controller', controllerId);
  const controller = (await controllerOfId.of(tx).load(controllerId))!;
  if (controller.propertyId !== input.propertyId)
    throw refuse({ field: 'controllerId', found: controller.name, expected: 'a controller of the same property' });
  if (station > controller.stations)
    throw refuse({
      field: 'station',
      found: station,
      expected: `1 to ${controller.stations}, the stations of controller ${controller.name}`,
    });
  const there = await zones.atStation(tx, controllerId, station);
  if (there && there.id !== id)
    throw refuse({
      field: 'station',
      found: station,
      expected: `a free station of controller ${controller.name}; this one waters zone ${there.name}`,
    });
}

async function judgeMeter(tx: OrganizationTransaction, input: ZoneInput): Promise<void> {
  if (!input.meterId) return;
  if (input.unmetered) throw refuse({ field: 'unmetered', found: true, expected: 'either a meter or unmetered, not both' });
  await requireInUse(tx, 'meter', input.meterId);
  const meter = (await meterOfId.of(tx).load(input.meterId))!;
  if (meter.propertyId !== input.propertyId)
    throw refuse({ field: 'meterId', found: meter.name, expected: 'a meter of the same property' });
}
