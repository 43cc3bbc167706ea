import { paths } from '../../page/paths.js';
import { type Address, oneOf } from '../../page/use-address.js';

/** What the list shows; those that wait are open or in work, and somebody has seen them. */
export const STATES = ['open', 'waiting', 'in work', 'resolved', 'dismissed'] as const;
export type FindingState = (typeof STATES)[number];

export interface FindingsPlace {
  readonly state: FindingState;
  readonly kind: string | null;
}

export const findingsAddress: Address<FindingsPlace> = {
  read: (query) => ({ state: oneOf(query.get('state'), STATES, 'open'), kind: query.get('kind') }),
  write: ({ state, kind }) => ({ state: state === 'open' ? null : state, kind }),
};

/** One finding of the list, with the list as it is. */
export function findingAddress(id: string, place: FindingsPlace): string {
  const query = new URLSearchParams(Object.entries(findingsAddress.write(place)).flatMap(([key, value]) => (value ? [[key, value]] : [])));
  return `${paths.finding(id)}${query.size > 0 ? `?${query}` : ''}`;
}
