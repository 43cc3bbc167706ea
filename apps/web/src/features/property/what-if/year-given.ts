import type { WhatIfOfPropertyQuery } from '../../../graphql/__generated__/graphql.js';

/** The property as the panel is given it. */
export type PropertyOfYear = NonNullable<WhatIfOfPropertyQuery['property']>;
export type YearGiven = NonNullable<PropertyOfYear['whatIf']>;

/** Zones that may be asked about: by station, as they stand in the last month. */
export interface AskedZones {
  readonly zones: readonly (YearGiven['stages'][number]['zones'][number] & { readonly name: string })[];
  /** Whether all together can be asked: the account counts some in every month. */
  readonly isWhole: boolean;
}

export function askedZones({ zones }: PropertyOfYear, { stages }: YearGiven): AskedZones {
  const last = Number.POSITIVE_INFINITY;
  const inOrder = [...zones].sort((one, other) => (one.station ?? last) - (other.station ?? last));
  const present = stages.at(-1)?.zones ?? [];
  return {
    zones: inOrder.flatMap(({ id, name }) => present.filter(({ zoneId }) => zoneId === id).map((zone) => ({ ...zone, name }))),
    isWhole: stages.every((stage) => stage.zones.some(({ isCounted }) => isCounted)),
  };
}
