import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { ReportsPageQuery } from '../../../graphql/__generated__/graphql.js';
import { Fold } from '../../../page/drawing/Fold.js';
import { useDeed } from '../../../page/use-deed.js';
import { useRecordName } from '../../../page/work/use-record-name.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { Select } from '../../../ui/forms/Select.js';
import { ErrorState } from '../../../ui/states/States.js';
import { LENGTHS, type PeriodLength, periodOf } from './period.js';

const draftOneDocument = graphql(`
  mutation DraftOneReport($id: ID, $input: WaterReportInput!) {
    createWaterReport(deviceRecordId: $id, input: $input) {
      __typename
      ... on WaterReport {
        id
      }
    }
  }
`);

interface Props {
  readonly month: string;
  readonly clients: ReportsPageQuery['clients'];
  readonly properties: ReportsPageQuery['properties'];
  readonly onMade: (id: string) => void;
}

const ALL = '';

/** A draft for one client, of all properties or of one. */
export function DraftOne({ month, clients, properties, onMade }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const [clientId, setClient] = useState(clients[0]?.id ?? '');
  const [propertyId, setProperty] = useState(ALL);
  const [length, setLength] = useState<PeriodLength>('month');
  const draft = useDeed(draftOneDocument, { refetch: ['ReportsPage'] });
  const { nameOf, forget } = useRecordName();
  const own = properties.filter(({ client }) => client?.id === clientId);
  const make = async (): Promise<void> => {
    const input = { clientId, propertyId: propertyId || null, ...periodOf(month, length) };
    const made = (await draft.run({ id: nameOf(input), input }))?.createWaterReport;
    if (made) forget();
    if (made?.__typename === 'WaterReport') onMade(made.id);
    else if (made) toast({ words: intl.formatMessage({ id: 'reports.there' }) });
  };
  return (
    <Fold summary={<FormattedMessage id="reports.draft.one" />}>
      <div className="chosen">
        <Select
          label={intl.formatMessage({ id: 'reports.head.client' })}
          value={clientId}
          choices={clients.map(({ id, name }) => ({ value: id, words: name }))}
          onChange={(next) => {
            setClient(next);
            setProperty(ALL);
          }}
        />
        <Select
          label={intl.formatMessage({ id: 'reports.of' })}
          value={propertyId}
          choices={[
            { value: ALL, words: intl.formatMessage({ id: 'reports.ofAll' }) },
            ...own.map(({ id, name }) => ({ value: id, words: name })),
          ]}
          onChange={setProperty}
        />
        <Select
          label={intl.formatMessage({ id: 'reports.length' })}
          value={length}
          choices={LENGTHS.map((value) => ({ value, words: intl.formatMessage({ id: `reports.length.${value}` }) }))}
          onChange={setLength}
        />
        <Button isBusy={draft.isBusy} onClick={() => void make()}>
          <FormattedMessage id="reports.draft.make" />
        </Button>
      </div>
      {draft.problem ? <ErrorState problem={draft.problem} /> : null}
    </Fold>
  );
}
