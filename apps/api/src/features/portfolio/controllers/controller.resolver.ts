import { Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { above, between, judgeValues, name, oneOf, text, twelve } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { filled } from '../../../platform/records/filled.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { adjustScopes } from './adjust-scope.js';
import { ControllerRow } from './controller.entity.js';
import { ControllerInput } from './controller.input.js';
import { controllers } from './controller.repository.js';
import { Controller, showController } from './controller.type.js';

const PERCENT = between(0, 1000, '%');
const RULES = {
  name: name(),
  stations: between(1, 500),
  programs: between(1, 100),
  startsPerProgram: between(1, 100),
  maxMinutes: above(0, 1440, 'minutes'),
  minuteStep: above(0, 60, 'minutes'),
  adjustScope: oneOf(...adjustScopes),
  adjustStepPercent: above(0, 100, '%'),
  maxAdjustPercent: PERCENT,
  monthlyAdjustPercent: twelve(PERCENT),
  runsAtOnce: between(1, 100),
  rainSensorMm: between(0, 250, 'mm'),
  location: text,
};

async function judgeZones(tx: OrganizationTransaction, input: ControllerInput, id: string): Promise<void> {
  const { elsewhere, highestStation } = await controllers.zonesOf(tx, id, input.propertyId);
  if (elsewhere)
    throw platformProblems.valueRefused({
      field: 'propertyId',
      found: input.propertyId,
      expected: `the property of the zones that this controller waters (${elsewhere}): give them another controller first`,
    });
  if (highestStation !== null && highestStation > input.stations)
    throw platformProblems.valueRefused({
      field: 'stations',
      found: input.stations,
      expected: `${highestStation} or more, for a zone stands at station ${highestStation}`,
    });
}

const Kept = keptThingResolver({
  name: 'Controller',
  row: ControllerRow,
  type: Controller,
  input: ControllerInput,
  show: showController,
  keep: (input) =>
    filled<ControllerRow>(input, [
      'propertyId',
      'name',
      'stations',
      'programs',
      'startsPerProgram',
      'maxMinutes',
      'minuteStep',
      'adjustScope',
      'adjustStepPercent',
      'maxAdjustPercent',
      'monthlyAdjustPercent',
      'runsAtOnce',
      'cycleSoak',
      'masterValve',
      'rainSensor',
      'rainSensorMm',
      'flowSensor',
      'location',
    ]),
  judge: async (tx, input, id) => {
    judgeValues(input, RULES);
    await requireInUse(tx, 'property', input.propertyId);
    if (id) await judgeZones(tx, input, id);
  },
  needs: async (tx, id) => {
    const { count } = await controllers.zonesOf(tx, id);
    return count ? { by: 'zone', count } : null;
  },
});

/** Controllers: created, changed, retired. */
@Resolver(() => Controller)
export class ControllerResolver extends Kept {}
