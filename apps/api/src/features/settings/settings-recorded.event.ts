/** Settings of a controller were kept for the first time; told in the same transaction. */
export class SettingsRecorded {
  constructor(
    readonly controllerId: string,
    readonly effectiveAt: Date,
  ) {}
}

/** A controller was paused for rain, or a pause of it ends at another time; told in the same transaction. */
export class PauseChanged {
  constructor(readonly controllerId: string) {}
}
