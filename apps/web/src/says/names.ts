/** Names of the zones, meters and controllers that reasons tell of by id. */
export interface Names {
  readonly of: (id: string | null | undefined) => string | null;
  /** The station of a zone: people call a zone by it. */
  readonly stationOf: (id: string | null | undefined) => number | null;
  /** Whether a controller must be named because there are several. */
  readonly severalControllers: boolean;
}

/** Where nothing has a name: the sentences count instead. */
export const noNames: Names = { of: () => null, stationOf: () => null, severalControllers: false };

interface Named {
  readonly id: string;
  readonly name: string;
}

interface NamedThings {
  readonly zones?: readonly (Named & { readonly station?: number | null })[];
  readonly meters?: readonly Named[];
  readonly controllers?: readonly Named[];
}

/** The names of what stands on a property. */
export function namesOf({ zones = [], meters = [], controllers = [] }: NamedThings): Names {
  const names = new Map([...zones, ...meters, ...controllers].map(({ id, name }) => [id, name] as const));
  const stations = new Map(zones.map(({ id, station }) => [id, station ?? null] as const));
  return {
    of: (id) => (id ? (names.get(id) ?? null) : null),
    stationOf: (id) => (id ? (stations.get(id) ?? null) : null),
    severalControllers: controllers.length > 1,
  };
}
