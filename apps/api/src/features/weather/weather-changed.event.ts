/** Days of a weather station were recorded or corrected. */
export class WeatherChanged {
  constructor(
    readonly stationId: string,
    /** YYYY-MM-DD */
    readonly fromDay: string,
    /** YYYY-MM-DD, included */
    readonly untilDay: string,
  ) {}
}
