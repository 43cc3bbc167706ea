import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { NotedReportFragment } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextAreaField } from '../../../ui/forms/Field.js';
import { ErrorState } from '../../../ui/states/States.js';
import type { TypedNote } from './use-typed-note.js';

export const notedReport = graphql(`
  fragment NotedReport on WaterReport {
    id
    version
    state
    clientId
    propertyId
    fromOn
    untilOn
    note
  }
`);
const noteDocument = graphql(`
  mutation NoteReport($id: ID!, $version: Int!, $input: WaterReportInput!) {
    changeWaterReport(id: $id, version: $version, input: $input) {
      __typename
      ... on WaterReport {
        id
        version
        note
      }
      ... on ChangedMeanwhile {
        version
      }
    }
  }
`);

interface Props {
  readonly report: FragmentType<NotedReportFragment>;
  readonly typed: TypedNote;
}

/** The office's own words to the client; of what is approved, as it was. */
export function NoteForm({ report: masked, typed }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const { id, version, state, note, clientId, propertyId, fromOn, untilOn } = useMasked(notedReport, masked);
  const keep = useDeed(noteDocument, { refetch: ['OneReport'] });
  if (state !== 'draft')
    return note ? (
      <p className="as-written">
        <b>
          <FormattedMessage id="reports.note" />
        </b>{' '}
        {note}
      </p>
    ) : null;
  const save = async (): Promise<void> => {
    const input = { clientId, propertyId: propertyId ?? null, fromOn, untilOn, note: typed.written };
    const answer = await keep.run({ id, version, input });
    if (!answer) return;
    const isKept = answer.changeWaterReport.__typename === 'WaterReport';
    toast({ words: intl.formatMessage({ id: isKept ? 'reports.noteKept' : 'reports.changedMeanwhile' }) });
  };
  return (
    <div className="note-form">
      <TextAreaField label={intl.formatMessage({ id: 'reports.note' })} isOptional value={typed.written} onChange={typed.write} />
      <Button isBusy={keep.isBusy} onClick={() => void save()}>
        <FormattedMessage id="reports.keepNote" />
      </Button>
      {keep.problem ? <ErrorState problem={keep.problem} /> : null}
    </div>
  );
}
