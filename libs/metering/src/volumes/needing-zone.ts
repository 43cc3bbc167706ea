/** A root zone: coefficient (plant, density and shade factor together), readily available water, and how uncertain both are. */
export interface NeedingZone {
  readonly plantCoefficient: number;
  readonly rawMm: number;
  readonly plantRelativeSd: number;
  readonly storageRelativeSd: number;
}

/**
 * Net depth that a zone needed in the days of a month that have weather; `ofDays` is one per covered day, 0 where the weather is not known.
 * `moved` is half the difference that an input makes when it is one standard deviation above and below.
 */
export interface NeededDepths {
  readonly netMm: number;
  readonly ofDays: Float64Array;
  readonly moved: { readonly plantFactor: number; readonly rootStorage: number; readonly eto: number; readonly rain: number };
}
