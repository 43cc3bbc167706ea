/**
 * What a controller can hold and how it rounds; null where nobody has said.
 *
 * `minuteStep` rounds run times and only then; `monthlyAdjustPercent` are twelve percents, January to December, that multiply the percent
 * adjust; `runsAtOnce` is the number of programs that may run side by side (null: one, later starts wait). `maxMinutes` and
 * `maxAdjustPercent` bound what can be set. `rainSensorMm` is the rain at which the rain sensor stops starts.
 */
export interface ControllerTraits {
  readonly stations: number | null;
  readonly programs: number | null;
  readonly startsPerProgram: number | null;
  readonly maxMinutes: number | null;
  readonly minuteStep: number | null;
  readonly adjustScope: 'controller' | 'program';
  readonly adjustStepPercent: number | null;
  readonly maxAdjustPercent: number | null;
  readonly monthlyAdjustPercent: readonly number[] | null;
  readonly runsAtOnce: number | null;
  readonly cycleSoak: boolean | null;
  readonly rainSensor: boolean | null;
  readonly rainSensorMm: number | null;
}
