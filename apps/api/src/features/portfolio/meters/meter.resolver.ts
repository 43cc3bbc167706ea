import { volumeUnits } from '@rillbook/units/volume.js';
import { Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { above, between, judgeOrder, judgeValues, name, oneOf } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { filled } from '../../../platform/records/filled.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { MeterRow } from './meter.entity.js';
import { MeterInput } from './meter.input.js';
import { meterKinds, waters } from './meter-words.js';
import { meters } from './meter.repository.js';
import { Meter, showMeter } from './meter.type.js';

const REGISTER = between(0, 1e12);
const RULES = {
  name: name('none'),
  kind: oneOf(...meterKinds),
  water: oneOf(...waters),
  unit: oneOf(...volumeUnits),
  multiplier: above(0, 1e6),
  digits: between(1, 12),
  resolution: above(0, 1e6),
  sizeMm: above(0, 1600, 'mm'),
  maxLPerMin: above(0, 400_000, 'L/min'),
  pressureKpa: between(0, 3500, 'kPa'),
  indoorLPerDay: between(0, 4e7, 'L a day'),
  pricePerUnit: between(0, 1e8),
  firstRegister: REGISTER,
  lastRegister: REGISTER,
};

/** A register of so many digits shows no more than all nines. */
function judgeDigits(input: MeterInput): void {
  for (const field of ['firstRegister', 'lastRegister'] as const) {
    const found = input[field] ?? 0;
    if (input.digits && found >= 10 ** input.digits)
      throw platformProblems.valueRefused({
        field,
        found,
        expected: `a number of at most ${input.digits} digits before the point, as this meter has`,
      });
  }
}

async function judgeZones(tx: OrganizationTransaction, input: MeterInput, id: string): Promise<void> {
  const { elsewhere } = await meters.zonesOf(tx, id, input.propertyId);
  if (elsewhere)
    throw platformProblems.valueRefused({
      field: 'propertyId',
      found: input.propertyId,
      expected: `the property of the zones that count with this meter (${elsewhere}): give them another meter first`,
    });
}

const Kept = keptThingResolver({
  name: 'Meter',
  row: MeterRow,
  type: Meter,
  input: MeterInput,
  show: showMeter,
  keep: (input) =>
    filled<MeterRow>(
      input,
      [
        'propertyId',
        'name',
        'kind',
        'water',
        'unit',
        'multiplier',
        'digits',
        'resolution',
        'sizeMm',
        'maxLPerMin',
        'pressureKpa',
        'indoorLPerDay',
        'pricePerUnit',
        'installedOn',
        'firstRegister',
        'removedOn',
        'lastRegister',
      ],
      { multiplier: 1 },
    ),
  judge: async (tx, input, id) => {
    judgeValues(input, RULES);
    judgeDigits(input);
    judgeOrder('removedOn', input.installedOn, input.removedOn, 'the day it was installed');
    await requireInUse(tx, 'property', input.propertyId);
    if (id) await judgeZones(tx, input, id);
  },
  needs: async (tx, id) => {
    const { count } = await meters.zonesOf(tx, id);
    return count ? { by: 'zone', count } : null;
  },
});

/** Meters: created, changed, retired. */
@Resolver(() => Meter)
export class MeterResolver extends Kept {}
