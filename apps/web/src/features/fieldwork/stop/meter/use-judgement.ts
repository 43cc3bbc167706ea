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

interface Asked {
  readonly typed: string;
  readonly register: number;
  readonly readAt: string;
}

const NOTHING: Asked = { typed: '', register: 0, readAt: '' };

/** What to ask of: the number as it stands once nobody presses the next key; null until then. */
function useAsked(typed: string, now: () => Date): Asked | null {
  const [asked, setAsked] = useState<Asked | null>(null);
  useEffect(() => {
    const register = Number(typed);
    if (typed === '' || !Number.isFinite(register)) return setAsked(null);
    const timer = setTimeout(() => setAsked({ typed, register, readAt: now().toISOString() }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed, now]);
  return asked?.typed === typed ? asked : null;
}

/** Asks, while one types, whether the register can be right. */
export function useJudgement({ meterId, typed, now }: Options): Judged {
  const asked = useAsked(typed, now);
  const { register, readAt } = asked ?? NOTHING;
  const { data, error } = useQuery(judgeReadingDocument, {
    variables: { meterId, register, readAt },
    skip: asked === null,
    fetchPolicy: 'no-cache',
  });
  if (!asked) return { judgement: null, isUnanswered: false, isAsked: typed !== '' };
  const judgement = data?.judgeReading ?? null;
  return { judgement, isUnanswered: error !== undefined, isAsked: judgement === null && error === undefined };
}
