import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { observe } from './observe.js';

/** What explains the usage of each step, and what was learnt of the meter to say so. */
export interface ExplainedSteps {
  /** Litres of the runs in each step; NaN where a zone's flow is not known. */
  readonly expectedLitres: Float64Array;
  /** Litres of indoor use in each step of a mixed meter; NaN while it is not learnt. */
  readonly indoorLitres: Float64Array;
  /** 1 where a run may have passed water: its minutes, the doubt of the clock and the drain after it. */
  readonly touched: Uint8Array;
  /** Litres that a finding accounts for. */
  readonly claimedLitres: Float64Array;
  readonly zones: readonly ExplainedZone[];
  readonly controllers: readonly { readonly controllerId: string | null; readonly shiftMinutes: number }[];
}

/** A zone's flow as usage tells it. `told` is false where usage cannot tell it apart and it is little more than the record. */
export interface ExplainedZone {
  readonly zoneId: string;
  readonly flowLPerMin: number | null;
  readonly sdLPerMin: number | null;
  readonly told: boolean;
}

/**
 * Which steps of a meter's usage the settings explain: runs by zone flows, with the clock's shift and the drain after a run, and indoor use.
 *
 * @param evidence - All that is known of the meter. [code]
 * @returns What explains each step, or null where there is no usage by steps. [L]
 * @throws {DomainError} `USAGE_STEPS_OUT_OF_DOMAIN` when a step is longer than an hour.
 */
export function explainSteps(evidence: MeterEvidence): ExplainedSteps | null {
  if (!evidence.usage) return null;
  const { meter, told } = observe(evidence, evidence.usage);
  const known = (value: number | undefined) => (value === undefined || Number.isNaN(value) ? null : value);
  return {
    expectedLitres: meter.expected,
    indoorLitres: meter.indoor,
    touched: meter.touched,
    claimedLitres: meter.claimed,
    zones: evidence.zones.map(({ zoneId }, zone) => ({
      zoneId,
      flowLPerMin: known(meter.flows[zone]),
      sdLPerMin: known(Math.sqrt(meter.flowCovariance[zone * (evidence.zones.length + 1)] ?? Number.NaN)),
      told: told[zone] ?? false,
    })),
    controllers: meter.controllers.map((controllerId, at) => ({ controllerId, shiftMinutes: meter.shiftMinutes[at] ?? 0 })),
  };
}
