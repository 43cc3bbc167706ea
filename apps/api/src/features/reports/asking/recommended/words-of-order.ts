import type { RecommendationLine } from './recommendation.repository.js';

/**
 * What an order says that a client's yes made; the client, the office and its crews read it, in the organization's language.
 *
 * That an offer is wanted is told of the order as long as it is so; here it would still stand when the work is done.
 */
const WORDS = {
  en: {
    divide: 'Separate lines for plants with different needs',
    approved: 'Approved by the client on their page.',
  },
  es: {
    divide: 'Líneas separadas para plantas con necesidades distintas',
    approved: 'Aprobado por el cliente en su página.',
  },
} as const;

export function whatOfOrder({ zoneName, cost }: Pick<RecommendationLine, 'zoneName' | 'cost'>, language: 'en' | 'es'): string {
  const { divide, approved } = WORDS[language];
  const what = `${[divide, zoneName].filter(Boolean).join(': ')}.`;
  return cost === null ? what : `${what} ${approved}`;
}

/** Whether nobody has written otherwise what such an order says, in whichever language. */
export const isInOwnWords = ({ what, zoneName }: Pick<RecommendationLine, 'what' | 'zoneName'>): boolean =>
  (['en', 'es'] as const).some((language) => whatOfOrder({ zoneName, cost: null }, language) === what);
