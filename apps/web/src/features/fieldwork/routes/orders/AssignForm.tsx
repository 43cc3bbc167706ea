import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { RadioList } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { useOrderOutcome } from './use-order-outcome.js';

const assignDocument = graphql(`
  mutation GiveOutWorkOrder($id: ID!, $version: Int!, $crewId: ID, $day: Date) {
    assignWorkOrder(id: $id, version: $version, crewId: $crewId, day: $day) {
      __typename
      ... on WorkOrder {
        id
        version
        state
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on ApprovalNeeded {
        needed: cost
        limit: notToExceed
      }
    }
  }
`);

interface Props {
  readonly order: { readonly id: string; readonly version: number };
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly day: string;
  readonly onClose: () => void;
}

const NOBODY = '';

/** A crew and a day, or nobody again. */
export function AssignForm({ order: { id, version }, crews, day: usual, onClose }: Props) {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const [crewId, setCrewId] = useState(crews[0]?.id ?? NOBODY);
  const [day, setDay] = useState(usual);
  const assign = useDeed(assignDocument, { refetch: ['Routes'] });
  const crew = crews.find((one) => one.id === crewId);
  const done = crew
    ? intl.formatMessage({ id: 'routes.assigned' }, { crew: crew.name, day: dayInWords(day) })
    : intl.formatMessage({ id: 'routes.takenBack' });
  const { refusal, settle } = useOrderOutcome(done);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const answer = await assign.run({ id, version, crewId: crewId || null, day: crewId ? day : null });
    if (answer && settle(answer.assignWorkOrder)) onClose();
  };
  return (
    <form className="form" onSubmit={(event) => void submit(event)}>
      {refusal && (
        <p className="problem" role="alert">
          {refusal}
        </p>
      )}
      {assign.problem ? <ErrorState problem={assign.problem} /> : null}
      <RadioList
        label={intl.formatMessage({ id: 'field.crew' })}
        value={crewId}
        choices={[
          ...crews.map(({ id: value, name }) => ({ value, words: name })),
          { value: NOBODY, words: intl.formatMessage({ id: 'routes.nobody' }) },
        ]}
        onChange={setCrewId}
      />
      {crewId !== NOBODY && (
        <TextField type="date" label={intl.formatMessage({ id: 'routes.day' })} value={day} onChange={(next) => next && setDay(next)} />
      )}
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={assign.isBusy}>
          <FormattedMessage id={crewId === NOBODY ? 'routes.takeBack' : 'routes.giveOut'} />
        </Button>
      </div>
    </form>
  );
}
