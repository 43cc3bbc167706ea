import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';

export interface Fault {
  readonly steady?: { readonly fromDay: number; readonly untilDay?: number; readonly litresPerMinute: number; readonly fromMinute?: number };
  readonly zone?: { readonly zone: number; readonly fromDay: number; readonly untilDay?: number; readonly factor: number };
  readonly allZones?: { readonly fromDay: number; readonly untilDay?: number; readonly factor: number };
  readonly offSchedule?: {
    readonly fromDay: number;
    readonly untilDay?: number;
    readonly clockMinute: number;
    readonly minutes: number;
    readonly everyDays: number;
    readonly litresPerMinute: number;
  };
  readonly duringRuns?: { readonly fromDay: number; readonly share: number };
}

export interface Wish {
  readonly seed: number;
  readonly days?: number;
  readonly firstDay?: number;
  readonly stepMinutes?: number;
  readonly kind?: 'irrigation' | 'mixed';
  readonly zones?: number;
  readonly sizeMm?: number;
  readonly resolutionLitres?: number;
  readonly shiftMinutes?: number;
  readonly sensor?: boolean;
  readonly pauses?: boolean;
  readonly everyDays?: number;
  readonly startMinute?: number;
  readonly missingShare?: number;
  readonly habits?: boolean;
  readonly clockChanges?: boolean;
  readonly recordSd?: number;
  readonly fault?: Fault;
}

export interface SimulatedMeter {
  readonly evidence: MeterEvidence;
  readonly flows: readonly number[];
  readonly shiftMinutes: number;
  /** Litres that a day of runs passes, by day. */
  readonly runLitres: Float64Array;
}

export function simulatedMeter(wish: Wish): SimulatedMeter;
export function randomFrom(seed: number): () => number;
