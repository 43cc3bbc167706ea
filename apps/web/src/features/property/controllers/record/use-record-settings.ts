import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { RecordSettingsAtDeskMutation } from '../../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useRecordName } from '../../../../page/work/use-record-name.js';
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

/** Records settings once, however often they are sent. */
export function useRecordSettings(controllerId: string) {
  const deed = useDeed(recordSettingsDocument, { refetch: ['PropertyPage', 'ControllerToRecord'] });
  const { nameOf, forget } = useRecordName();
  const run = async ({ programs, ...settings }: TypedSettings): Promise<Recorded | null> => {
    const input = { controllerId, ...settings, programs: settings.state === 'on' ? sentPrograms(programs) : [] };
    const recorded = (await deed.run({ input: { deviceRecordId: nameOf(input), ...input } }))?.recordSettings ?? null;
    if (recorded) forget();
    return recorded;
  };
  return { run, isBusy: deed.isBusy, problem: deed.problem };
}
