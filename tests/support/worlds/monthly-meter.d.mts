import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';

/** What a property is drawn with. `share` of an interval's own water or `litresPerDay` more, from one reading until another. */
export interface MonthlyWorld {
  readonly readings: number;
  readonly noise: number;
  readonly ratioSd: number;
  readonly ratio: number | null;
  readonly season: number;
  readonly litresPerDay: number;
  readonly resolutionLitres: number;
  readonly indoorLitresPerDay: number | null;
  readonly programmedKnown: boolean;
  readonly runsKnown: boolean;
  readonly source: 'readings' | 'bills';
  readonly trouble: {
    readonly fromReading: number;
    readonly untilReading?: number;
    readonly share?: number;
    readonly litresPerDay?: number;
  } | null;
}

export function drawsOf(seed: number): () => number;
export function normalOf(draw: () => number): number;
export function monthlyMeter(seed: number, changes?: Partial<MonthlyWorld>): MeterEvidence;
