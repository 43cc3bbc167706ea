import { useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { RecordReadingAtDeskMutation } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useSays } from '../../says/use-says.js';
import { useDeed } from '../use-deed.js';
import { useRecordName } from './use-record-name.js';

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
  /** the reading in whose place it comes */
  readonly replacesId?: string;
}

/** Records a reading once, however often it is sent. */
export function useRecordReading(meterId: string, refetch: readonly string[]) {
  const deed = useDeed(recordReadingDocument, { refetch });
  const { nameOf, forget } = useRecordName();
  const run = async (reading: Reading): Promise<Recorded | null> => {
    const recorded = (await deed.run({ input: { deviceRecordId: nameOf(reading), meterId, ...reading } }))?.recordReading ?? null;
    if (recorded) forget();
    return recorded;
  };
  return { run, isBusy: deed.isBusy, problem: deed.problem };
}

/** What became of a reading, in words. */
export function useRecordedWords(): (recorded: Recorded) => string {
  const intl = useIntl();
  const formats = useFormats();
  const { word, volume } = useSays();
  return (recorded) => {
    switch (recorded.__typename) {
      case 'Reading': {
        const litres = typeof recorded.litresSinceLast === 'number' ? volume(recorded.litresSinceLast) : 'none';
        return intl.formatMessage({ id: 'property.reading.done' }, { judgement: word('judgement', recorded.judgement), litres });
      }
      case 'ReadingConflict': {
        const { register, readAt } = recorded.kept;
        return intl.formatMessage(
          { id: 'property.reading.conflict' },
          { register: formats.number(register, 3), day: formats.moment(readAt) },
        );
      }
    }
  };
}
