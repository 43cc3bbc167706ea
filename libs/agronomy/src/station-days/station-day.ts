import type { AssumedInput } from '../evapotranspiration/assumed-input.js';
import type { EvapotranspirationMethod } from '../evapotranspiration/evapotranspiration-sd.js';
import type { EvapotranspirationGap } from '../evapotranspiration/reference-evapotranspiration.js';
import type { NeighbourValues } from '../weather/filling/neighbour-values.js';
import type { WeatherMark } from '../weather/quality/weather-mark.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Why a day has no reference evapotranspiration of its own: nobody sent it, or its temperatures are missing or refused. */
export type StationDayGap = EvapotranspirationGap | 'not-recorded';

/** Where the reference evapotranspiration of a day without its own is from. */
export type EtoFilling =
  | { readonly from: 'neighbour'; readonly values: NeighbourValues }
  | { readonly from: 'normals'; readonly days: number };

/** A day's reference evapotranspiration with its relative standard deviation, and how it came about; null with the reason. */
export type DayEto =
  | {
      readonly etoMm: Quantity<'mm'>;
      readonly relativeSd: number;
      /** Null where it is the mean of a history. */
      readonly method: EvapotranspirationMethod | null;
      readonly assumed: readonly AssumedInput[];
      readonly filling: EtoFilling | null;
      readonly reason: null;
    }
  | { readonly etoMm: null; readonly filling: null; readonly reason: StationDayGap };

/** One day as it is reckoned with: judged, computed, filled where that was needed. */
export type StationDay = {
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly marks: readonly WeatherMark[];
  readonly eto: DayEto;
  /** Null where it is not known: never zero, never from normals. [mm] */
  readonly rainMm: Quantity<'mm'> | null;
  readonly rainFrom: 'station' | 'neighbour' | null;
  /** How far it may be off; where it is not known, how much may have fallen. 0 for what was measured here without doubt. [mm] */
  readonly rainSdMm: Quantity<'mm'>;
};
