import { flowOfTest, tellsFlow } from '@rillbook/metering/intervals/flow-of-test.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { isVolumeUnit } from '@rillbook/units/volume.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { meterOfId } from '../../../portfolio/meters/meter.loader.js';
import type { Told } from './told.js';

/** A zone that ran alone between two readings of its meter. */
export interface FlowGiven {
  readonly kind: 'flow';
  readonly minutes: number | null;
  readonly meterId: string;
  readonly registerBefore: number;
  readonly registerAfter: number;
}

const refuse = platformProblems.valueRefused;

/** What a flow test told; a register that reads too coarsely for the time is kept and goes on no record. */
export async function flowOf(tx: OrganizationTransaction, given: FlowGiven, propertyId: string): Promise<Told> {
  const { meterId, registerBefore, registerAfter, minutes } = given;
  const meter = isUuid(meterId) ? await meterOfId.of(tx).load(meterId.toLowerCase()) : null;
  if (!meter || meter.propertyId !== propertyId || !isVolumeUnit(meter.unit))
    throw refuse({ field: 'meterId', found: meterId, expected: 'a meter of the property that is visited' });
  if (minutes === null) throw refuse({ field: 'minutes', found: null, expected: 'how long the zone ran' });
  const { unit, multiplier, digits, resolution } = meter;
  try {
    const registers = { from: registerBefore, to: registerAfter };
    const tested = flowOfTest(registers, { unit, multiplier, digits }, resolution, minutes as Quantity<'min'>);
    return {
      columns: { meterId: meter.id, registerBefore, registerAfter, flowLPerMin: tested.flow, flowSdLPerMin: tested.sd },
      measured: tellsFlow(tested) ? { flowLPerMin: tested.flow } : null,
    };
  } catch (problem) {
    if (!(problem instanceof DomainError)) throw problem;
    throw problem.code === 'FLOW_TEST_OUT_OF_DOMAIN'
      ? refuse({ field: 'minutes', found: minutes, expected: 'minutes above zero' })
      : refuse({ field: 'registerAfter', found: registerAfter, expected: `a register of meter ${meter.name}, ${registerBefore} or later` });
  }
}
