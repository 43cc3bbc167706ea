import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { forgetRecord, recordName } from '../../device/record-name.js';
import type { Sending } from '../../device/use-sending.js';
import { type GivenProgram, sentPrograms } from '../editor/settings-fact.js';

const recordSettingsDocument = graphql(`
  mutation RecordSettings($input: SettingsInput!) {
    recordSettings(input: $input) {
      __typename
      ... on Settings {
        id
        controllerId
        effectiveAt
        record
        state
      }
      ... on SettingsConflict {
        kept {
          id
          effectiveAt
          record
          state
          recordedBy
        }
      }
    }
  }
`);

export interface KeptFact {
  readonly record: string;
  readonly at: string;
  readonly isOther: boolean;
  readonly by: string | null;
}

interface Options {
  readonly controller: { readonly id: string; readonly name: string };
  readonly stopId: string;
  readonly now: () => Date;
  readonly send: Sending['send'];
}

interface SettingsDeed {
  readonly record: (record: 'found' | 'left', state: string, programs: readonly GivenProgram[]) => Promise<boolean>;
  readonly kept: KeptFact | null;
  readonly again: () => void;
  readonly problem: unknown;
}

/** Records settings once, however often they have to be sent. What was found leads on to what is left; what is left ends the step. */
export function useSettings({ controller, stopId, now, send }: Options): SettingsDeed {
  const intl = useIntl();
  const { run, problem } = useDeed(recordSettingsDocument, { refetch: ['Stop'] });
  const [kept, setKept] = useState<KeptFact | null>(null);
  const record: SettingsDeed['record'] = async (as, state, programs) => {
    const key = `settings.${as}.${stopId}.${controller.id}`;
    const content = { state, programs: state === 'on' ? sentPrograms(programs) : [] };
    const { deviceRecordId, at } = recordName(key, content, now());
    const what = intl.formatMessage({ id: 'field.what.settings' }, { name: controller.name });
    const answer = await send(what, () =>
      run({ input: { deviceRecordId, controllerId: controller.id, effectiveAt: at, record: as, ...content } }),
    );
    if (!answer) return false;
    forgetRecord(key);
    const { recordSettings: told } = answer;
    switch (told.__typename) {
      case 'Settings':
        if (as === 'left') setKept({ record: told.record, at: told.effectiveAt, isOther: false, by: null });
        return true;
      case 'SettingsConflict':
        setKept({ record: told.kept.record, at: told.kept.effectiveAt, isOther: true, by: told.kept.recordedBy ?? null });
        return true;
    }
  };
  return { record, kept, again: () => setKept(null), problem };
}
