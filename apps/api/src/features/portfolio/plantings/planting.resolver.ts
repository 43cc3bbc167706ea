import { waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { Resolver } from '@nestjs/graphql';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { between, judgeValues, name, oneOf } from '../../../platform/problems/judge-values.js';
import { filled } from '../../../platform/records/filled.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { PlantingRow } from './planting.entity.js';
import { PlantingInput } from './planting.input.js';
import { Planting, showPlanting } from './planting.type.js';

const Kept = keptThingResolver({
  name: 'Planting',
  row: PlantingRow,
  type: Planting,
  input: PlantingInput,
  show: showPlanting,
  keep: (input) => filled<PlantingRow>(input, ['zoneId', 'species', 'coverPercent', 'waterNeed', 'plantedOn']),
  called: (input) => input.species,
  judge: async (tx, input) => {
    judgeValues(input, { species: name(), coverPercent: between(0, 100, '%'), waterNeed: oneOf(...waterNeeds) });
    await requireInUse(tx, 'zone', input.zoneId);
  },
});

/** Plantings: created, changed, retired. */
@Resolver(() => Planting)
export class PlantingResolver extends Kept {}
