import type { PortfolioSort } from '../../../graphql/__generated__/graphql.js';
import { type Address, monthIn, oneOf } from '../../../page/use-address.js';

/** Why a property stands in the list, in the server's words; `every` is no filter. */
export const WHYS = ['every', 'settings', 'unexplained', 'too little', 'not counted'] as const;
export type Why = (typeof WHYS)[number];

const SORTS = ['money', 'volume', 'name'] as const satisfies readonly PortfolioSort[];

export interface PortfolioPlace {
  readonly text: string;
  readonly why: Why;
  /** A kind of finding, from a link. */
  readonly kind: string | null;
  /** A crew's id, or `nobody`. */
  readonly who: string | null;
  readonly month: string | null;
  readonly sort: PortfolioSort;
  /** Whether those near their need are shown. */
  readonly near: boolean;
}

export const portfolioAddress: Address<PortfolioPlace> = {
  read: (query) => ({
    text: query.get('text') ?? '',
    why: oneOf(query.get('why'), WHYS, 'every'),
    kind: query.get('kind'),
    who: query.get('who'),
    month: monthIn(query.get('month')),
    sort: oneOf(query.get('sort'), SORTS, 'money'),
    near: query.get('near') === 'shown',
  }),
  write: ({ text, why, kind, who, month, sort, near }) => ({
    text,
    why: why === 'every' ? null : why,
    kind,
    who,
    month,
    sort: sort === 'money' ? null : sort,
    near: near ? 'shown' : null,
  }),
};

/** Whether the list is narrowed, so that its sentence does not speak of all. */
export const isNarrowed = ({ text, why, kind, who }: PortfolioPlace): boolean => Boolean(text || kind || who || why !== 'every');
