interface Zone {
  readonly id: string;
  readonly name: string;
  readonly station?: number | null;
  readonly controllerId?: string | null;
  readonly retiredAt?: string | null;
}

/** The zones in use in the order in which a crew walks them: by controller and station, then those without. */
export function zonesInOrder<One extends Zone>(zones: readonly One[], controllers: readonly { readonly id: string }[]): One[] {
  const order = new Map(controllers.map(({ id }, at) => [id, at]));
  const place = ({ controllerId, station }: Zone): number => (order.get(controllerId ?? '') ?? order.size) * 1000 + (station ?? 999);
  return zones.filter(({ retiredAt }) => !retiredAt).sort((a, b) => place(a) - place(b) || a.name.localeCompare(b.name));
}

/** How a zone is called for short: its station, else its name. */
export const labelOf = ({ name, station }: Pick<Zone, 'name' | 'station'>): string =>
  typeof station === 'number' ? String(station) : name;
