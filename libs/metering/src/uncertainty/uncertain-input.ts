/** An uncertain input by kind. */
export type InputName =
  | 'area'
  | 'plantFactor'
  | 'rootStorage'
  | 'uniformity'
  | 'eto'
  | 'rain'
  | 'flow'
  | 'precipitationRate'
  | 'handVolume'
  | 'meter'
  | 'registerResolution'
  | 'apportioning'
  | 'indoor'
  | 'rainSensor'
  | 'settingsFromWeather'
  | 'filledWeather'
  | 'filledSettings'
  | 'filledReadings';

/**
 * One uncertain input; `subjectId` is the zone, controller or meter it belongs to, null for the weather. The same input is the same object,
 * wherever it is used; `place` is its number among the inputs of the property.
 */
export interface UncertainInput {
  readonly input: InputName;
  readonly subjectId: string | null;
  readonly place: number;
}

/** All uncertain inputs of one property, each of them once. Volumes are combined only within one property. */
export class UncertainInputs {
  private readonly known = new Map<InputName, Map<string | null, UncertainInput>>();
  private count = 0;

  /**
   * An input: the same one each time it is asked for.
   *
   * @param input - The kind of input. [code]
   * @param subjectId - The zone, controller or meter that it belongs to; null for the weather. [code]
   * @returns The input. [code]
   */
  input(input: InputName, subjectId: string | null): UncertainInput {
    let named = this.known.get(input);
    if (!named) {
      named = new Map();
      this.known.set(input, named);
    }
    let present = named.get(subjectId);
    if (!present) {
      present = { input, subjectId, place: this.count };
      this.count += 1;
      named.set(subjectId, present);
    }
    return present;
  }
}
