import { flowOfTest, minutesToTell, type TestedFlow, tellsFlow } from '@rillbook/metering/intervals/flow-of-test.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { isVolumeUnit } from '@rillbook/units/volume.js';
import type { TestMeter } from './zone-test.js';

/** A flow test as it is written: two registers and the clock between them. */
export interface FlowRead {
  readonly registerBefore: number;
  readonly registerAfter: number;
  readonly minutes: number;
}

/** What a flow test told; `wrong` where it cannot be. */
export type FlowTold =
  | { readonly kind: 'told'; readonly tested: TestedFlow; readonly isEnough: boolean; readonly minutesNeeded: number | null }
  | { readonly kind: 'wrong' };

/** What two registers and the time between them tell of a zone: the same computation as the server's, made on the phone. */
export function flowTold(meter: TestMeter, { registerBefore, registerAfter, minutes }: FlowRead): FlowTold {
  const { unit, multiplier, digits = null, resolution = null } = meter;
  if (!isVolumeUnit(unit)) return { kind: 'wrong' };
  const time = minutes as Quantity<'min'>;
  try {
    const tested = flowOfTest({ from: registerBefore, to: registerAfter }, { unit, multiplier, digits }, resolution, time);
    return { kind: 'told', tested, isEnough: tellsFlow(tested), minutesNeeded: minutesToTell(tested, time) };
  } catch (problem) {
    if (problem instanceof DomainError) return { kind: 'wrong' };
    throw problem;
  }
}
