import type { RecommendationLine } from './recommendation.repository.js';

/** What an order says that a client's yes made; the office and its crews read it, in the organization's language. */
const WORDS = {
  en: {
    divide: 'Separate lines for plants with different needs',
    offer: 'The client wants an offer.',
    approved: 'Approved by the client on their page.',
  },
  es: {
    divide: 'Líneas separadas para plantas con necesidades distintas',
    offer: 'El cliente pide una oferta.',
    approved: 'Aprobado por el cliente en su página.',
  },
} as const;

export function whatOfOrder({ zoneName, cost }: Pick<RecommendationLine, 'zoneName' | 'cost'>, language: 'en' | 'es'): string {
  const { divide, offer, approved } = WORDS[language];
  return `${[divide, zoneName].filter(Boolean).join(': ')}. ${cost === null ? offer : approved}`;
}
