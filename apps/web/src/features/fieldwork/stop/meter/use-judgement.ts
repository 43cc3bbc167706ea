import { useQuery } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { JudgeReadingQuery } from '../../../../graphql/__generated__/graphql.js';

const judgeReadingDocument = graphql(`
  query JudgeReading($meterId: ID!, $readAt: DateTime!, $register: Float!) {
    judgeReading(meterId: $meterId, readAt: $readAt, register: $register) {
      judgement
      litresSinceLast
      lastReadAt
      lastRegister
      likelyRegister
      programmedLitres
    }
  }
`);

export type Judgement = JudgeReadingQuery['judgeReading'];

export interface Judged {
  /** Null while nothing is typed, while it is asked, and where nobody answered. */
  readonly judgement: Judgement | null;
  readonly isAsked: boolean;
  readonly isUnanswered: boolean;
}

const FINE: ReadonlySet<string> = new Set(['first', 'ok', 'rollover']);
/** So long nobody presses the next key. */
const PAUSE_MS = 400;

/** Whether the number needs a second look at the dial. */
export const isDoubtful = (judgement: string): boolean => !FINE.has(judgement);

interface Options {
  readonly meterId: string;
  readonly typed: string;
  readonly now: () => Date;
}

/** Asks, while one types, whether the register can be right. */
export function useJudgement({ meterId, typed, now }: Options): Judged {
  const [asked, setAsked] = useState<{ typed: string; register: number; readAt: string } | null>(null);
  useEffect(() => {
    const register = Number(typed);
    if (typed === '' || !Number.isFinite(register)) return;
    const timer = setTimeout(() => setAsked({ typed, register, readAt: now().toISOString() }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed, now]);
  const isCurrent = asked?.typed === typed && typed !== '';
  const { data, error } = useQuery(judgeReadingDocument, {
    variables: { meterId, register: asked?.register ?? 0, readAt: asked?.readAt ?? '' },
    skip: !isCurrent,
    fetchPolicy: 'no-cache',
  });
  return {
    judgement: isCurrent ? (data?.judgeReading ?? null) : null,
    isAsked: typed !== '' && !(isCurrent && (data || error)),
    isUnanswered: isCurrent && error !== undefined,
  };
}
