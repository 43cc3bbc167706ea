import { useRef } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { RecordReadingAtDeskMutation } from '../../../graphql/__generated__/graphql.js';
import { newId } from '../../../page/values/new-id.js';
import { useDeed } from '../../../page/use-deed.js';

const recordReadingDocument = graphql(`
  mutation RecordReadingAtDesk($input: ReadingInput!) {
    recordReading(input: $input) {
      __typename
      ... on Reading {
        id
        judgement
        litresSinceLast
      }
      ... on ReadingConflict {
        kept {
          id
          register
          readAt
        }
      }
    }
  }
`);

export type Recorded = RecordReadingAtDeskMutation['recordReading'];

interface Reading {
  readonly register: number;
  readonly readAt: string;
  readonly note: string | null;
}

/** Records a reading once: pressed again after a lost answer it is the same record, and only a kept one makes way for the next. */
export function useRecordReading(meterId: string) {
  const deed = useDeed(recordReadingDocument, { refetch: ['PropertyPage'] });
  const record = useRef<{ id: string; of: string } | null>(null);
  const run = async (reading: Reading): Promise<Recorded | null> => {
    const of = JSON.stringify(reading);
    if (record.current?.of !== of) record.current = { id: newId(), of };
    const recorded = (await deed.run({ input: { deviceRecordId: record.current.id, meterId, ...reading } }))?.recordReading ?? null;
    if (recorded) record.current = null;
    return recorded;
  };
  return { run, isBusy: deed.isBusy, problem: deed.problem };
}
