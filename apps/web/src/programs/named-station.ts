/** A station of the controller and the zone that it waters. */
export interface NamedStation {
  readonly station: number;
  readonly name: string;
}
