import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { RecordReadingMutation } from '../../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { forgetRecord, recordName } from '../../device/record-name.js';
import type { Sending } from '../../device/use-sending.js';

const recordReadingDocument = graphql(`
  mutation RecordReading($input: ReadingInput!) {
    recordReading(input: $input) {
      __typename
      ... on Reading {
        id
        readAt
        register
        judgement
        litresSinceLast
        note
      }
      ... on ReadingConflict {
        kept {
          id
          readAt
          register
          judgement
          litresSinceLast
          note
          recordedBy
        }
      }
    }
  }
`);

type Answer = RecordReadingMutation['recordReading'];

/** What stands at the server now: the reading that was sent, or another that was there before it. */
export interface Kept {
  readonly register: number;
  readonly readAt: string;
  readonly litresSinceLast: number | null;
  readonly judgement: string;
  readonly note: string | null;
  readonly isOther: boolean;
  readonly by: string | null;
}

interface Options {
  readonly meterId: string;
  readonly name: string;
  readonly stopId: string;
  readonly now: () => Date;
  readonly send: Sending['send'];
}

interface Reading {
  readonly save: (register: number, note: string | null) => Promise<boolean>;
  readonly kept: Kept | null;
  /** Reads the same meter again, in place of what was kept. */
  readonly again: () => void;
  readonly problem: unknown;
}

/** Records a reading once, however often it has to be sent. */
export function useReading({ meterId, name, stopId, now, send }: Options): Reading {
  const intl = useIntl();
  const { run, problem } = useDeed(recordReadingDocument, { refetch: ['Stop'] });
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [replacesId, setReplacesId] = useState<string | null>(null);
  const key = `reading.${stopId}.${meterId}`;
  const save = async (register: number, note: string | null): Promise<boolean> => {
    const { deviceRecordId, at } = recordName(key, { register, note, replacesId }, now());
    const what = intl.formatMessage({ id: 'field.what.reading' }, { name });
    const found = await send(what, () => run({ input: { deviceRecordId, meterId, register, note, readAt: at, replacesId } }));
    if (!found) return false;
    forgetRecord(key);
    setAnswer(found.recordReading);
    return true;
  };
  const again = (): void => {
    setReplacesId(answer === null ? null : answer.__typename === 'Reading' ? answer.id : answer.kept.id);
    setAnswer(null);
  };
  return { save, again, problem, kept: answer && keptOf(answer) };
}

function keptOf(answer: Answer): Kept {
  switch (answer.__typename) {
    case 'Reading':
      return shown(answer, false, null);
    case 'ReadingConflict':
      return shown(answer.kept, true, answer.kept.recordedBy ?? null);
  }
}

type Told = Extract<Answer, { __typename?: 'Reading' }>;

const shown = (
  { register, readAt, litresSinceLast, judgement, note }: Told | Omit<Told, '__typename'>,
  isOther: boolean,
  by: string | null,
): Kept => ({
  register,
  readAt,
  litresSinceLast: litresSinceLast ?? null,
  judgement,
  note: note ?? null,
  isOther,
  by,
});
