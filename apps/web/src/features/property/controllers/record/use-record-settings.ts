import { useRef } from 'react';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { RecordSettingsAtDeskMutation } from '../../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { newId } from '../../../../page/values/new-id.js';
import { type GivenProgram, sentPrograms } from '../../../../programs/settings-fact.js';

const recordSettingsDocument = graphql(`
  mutation RecordSettingsAtDesk($input: SettingsInput!) {
    recordSettings(input: $input) {
      __typename
      ... on Settings {
        id
        record
        localTime
      }
      ... on SettingsConflict {
        kept {
          id
          record
          localTime
          recordedBy
        }
      }
    }
  }
`);

export type Recorded = RecordSettingsAtDeskMutation['recordSettings'];

interface TypedSettings {
  readonly effectiveAt: string;
  readonly record: string;
  readonly state: string;
  readonly programs: readonly GivenProgram[];
}

/** Records settings once: pressed again after a lost answer they are the same record, and only kept ones make way for the next. */
export function useRecordSettings(controllerId: string) {
  const deed = useDeed(recordSettingsDocument, { refetch: ['PropertyPage', 'ControllerToRecord'] });
  const record = useRef<{ id: string; of: string } | null>(null);
  const run = async ({ programs, ...settings }: TypedSettings): Promise<Recorded | null> => {
    const input = { controllerId, ...settings, programs: settings.state === 'on' ? sentPrograms(programs) : [] };
    const of = JSON.stringify(input);
    if (record.current?.of !== of) record.current = { id: newId(), of };
    const recorded = (await deed.run({ input: { deviceRecordId: record.current.id, ...input } }))?.recordSettings ?? null;
    if (recorded) record.current = null;
    return recorded;
  };
  return { run, isBusy: deed.isBusy, problem: deed.problem };
}
