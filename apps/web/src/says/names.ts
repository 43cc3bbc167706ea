/** Names of the zones, meters and controllers that reasons tell of by id. */
export interface Names {
  readonly of: (id: string | null | undefined) => string | null;
  /** Whether a controller must be named because there are several. */
  readonly severalControllers: boolean;
}

/** Where nothing has a name: the sentences count instead. */
export const noNames: Names = { of: () => null, severalControllers: false };

interface Named {
  readonly id: string;
  readonly name: string;
}

interface NamedThings {
  readonly zones?: readonly (Named & { readonly station?: number | null })[];
  readonly meters?: readonly Named[];
  readonly controllers?: readonly Named[];
}

/** Names as a person says them: a zone by its station and its name. */
export function namesOf({ zones = [], meters = [], controllers = [] }: NamedThings): Names {
  const names = new Map<string, string>([
    ...[...meters, ...controllers].map(({ id, name }) => [id, name] as const),
    ...zones.map(({ id, name, station }) => [id, station === null || station === undefined ? name : `${station} ${name}`] as const),
  ]);
  return { of: (id) => (id ? (names.get(id) ?? null) : null), severalControllers: controllers.length > 1 };
}
