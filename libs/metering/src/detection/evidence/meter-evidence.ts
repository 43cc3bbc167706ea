import type { UsageInterval } from '../../intervals/usage-interval.js';

/** A zone on the meter. `flowLPerMin` is what is on record, null where it is not known; `flowRelativeSd` how far it may be off. */
export interface EvidenceZone {
  readonly zoneId: string;
  readonly controllerId: string | null;
  readonly station: number | null;
  readonly flowLPerMin: number | null;
  readonly flowRelativeSd: number;
}

/** A valve that the settings held open, in elapsed minutes (`elapsedMinutes` of irrigation). */
export interface EvidenceRun {
  readonly zoneId: string;
  readonly program: string;
  readonly begin: number;
  readonly end: number;
}

/**
 * Usage by fixed steps of time, in elapsed minutes: `litres[i]` passed in [firstMinute + i·stepMinutes, + stepMinutes); NaN is not known.
 * `resolutionLitres` is the least step in which it is told.
 */
export interface StepUsage {
  readonly firstMinute: number;
  readonly stepMinutes: number;
  readonly litres: Float64Array;
  readonly resolutionLitres: number | null;
}

/**
 * All that is known of one meter over whole local days, oldest first: what its findings are judged by. Arrays are by local day from
 * `firstDay` (day number); NaN is not known. `midnights` has one more: the elapsed minute at which each day begins, and the last ends.
 *
 * `programmedLitres` and `neededLitres` are gross, of this meter's zones by the flows on record; `programmedIsEstimate` marks days on which
 * a controller computes its own times. `programmedRelativeSd` is systematic: how far the flows on record may be off altogether.
 * `handLitresPerDay` is what people say that they water by hand from this meter, no part of the programmed water. `indexLitres` is what settings put out
 * by flows that are typical of each method and area, only where a flow is not on record: its course is right, its level is not.
 * `foundDays` are local days on which settings were found that somebody had changed before, nobody knows when. `litresOfZones` is programmed water by zone and day, in the order of the zones: runs may be known of some days only. `runs` are in order of their begin; `intervals` are one source per instant, in order of time, without those between doubtful readings; `billed` are all
 * bills of a meter, also where it is read: a bill may come before the next reading.
 */
export interface MeterEvidence {
  readonly meterId: string;
  readonly kind: 'irrigation' | 'mixed';
  readonly indoorLitresPerDay: number | null;
  readonly sizeMm: number | null;
  readonly resolutionLitres: number | null;
  readonly firstDay: number;
  readonly days: number;
  readonly midnights: Float64Array;
  readonly rainMm: Float64Array;
  readonly etoMm: Float64Array;
  readonly programmedLitres: Float64Array;
  readonly programmedIsEstimate: Uint8Array;
  readonly handLitresPerDay?: number;
  readonly indexLitres?: Float64Array | null;
  readonly foundDays?: readonly number[];
  readonly litresOfZones?: readonly Float64Array[];
  readonly neededLitres: Float64Array;
  readonly programmedRelativeSd: number;
  readonly zones: readonly EvidenceZone[];
  readonly runs: readonly EvidenceRun[];
  readonly intervals: readonly UsageInterval[];
  readonly billed?: readonly UsageInterval[];
  readonly usage: StepUsage | null;
  readonly pricePerLitre: number | null;
}
