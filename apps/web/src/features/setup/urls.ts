import type { Address } from '../../page/use-address.js';

/** The pages of Setup. */
export const setupPaths = {
  exchange: '/setup',
  import: '/setup/import',
  clients: '/setup/clients',
  properties: '/setup/properties',
  property: (id: string): string => `/setup/properties/${id}`,
  suppliers: '/setup/suppliers',
  stations: '/setup/stations',
  station: (id: string): string => `/setup/stations/${id}`,
  crews: '/setup/crews',
  people: '/setup/people',
  brand: '/setup/reports',
  organization: '/setup/organization',
} as const;

export interface ExchangePlace {
  /** The upload that is looked at. */
  readonly upload: string | null;
  /** The import that is under way or has ended. */
  readonly job: string | null;
}

export const exchangeAddress: Address<ExchangePlace> = {
  read: (query) => ({ upload: query.get('import'), job: query.get('job') }),
  write: ({ upload, job }) => ({ import: upload, job }),
};

/** What a page of kept things has open: the form of one of them, or of a new one. */
export interface ThingsPlace {
  readonly thing: string | null;
  /** The kind of thing, where a page has several. */
  readonly kind: string | null;
  /** What the list is searched for. */
  readonly find: string | null;
}

export const NEW = 'new';

export const thingsAddress: Address<ThingsPlace> = {
  read: (query) => ({ thing: query.get('thing'), kind: query.get('kind'), find: query.get('find') }),
  write: ({ thing, kind, find }) => ({ thing, kind, find }),
};

export interface StationPlace {
  /** Which month's days are shown; the newest where none is named. */
  readonly month: string | null;
}

export const stationAddress: Address<StationPlace> = {
  read: (query) => ({ month: query.get('month') }),
  write: ({ month }) => ({ month }),
};
