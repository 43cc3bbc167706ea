/**
 * One change of a place's clock, as data: the libraries know no time zones.
 *
 * `date` and `atMinute` are the wall time at which the clock is moved (02:00 is 120), as shown before the change; `shiftMinutes` is +60 when
 * it springs forward and -60 when it falls back.
 */
export interface ClockChange {
  readonly date: string;
  readonly atMinute: number;
  readonly shiftMinutes: number;
}
