import type { FragmentType } from '@apollo/client';
import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { OwnQuestionFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useDeed } from '../../page/use-deed.js';
import { useMaskedList } from '../../page/use-masked.js';
import { Button } from '../../ui/forms/Button.js';
import { TextAreaField } from '../../ui/forms/Field.js';
import { Select } from '../../ui/forms/Select.js';
import { Section } from '../../ui/frame/Section.js';
import { ErrorState } from '../../ui/states/States.js';

export const ownQuestion = graphql(`
  fragment OwnQuestion on ClientQuestion {
    id
    about
    question
    askedAt
    answer
    answeredAt
    dismissedAt
  }
`);
const askDocument = graphql(`
  mutation AskOffice($question: String!, $propertyId: ID) {
    askOffice(question: $question, propertyId: $propertyId) {
      id
    }
  }
`);

interface Props {
  readonly questions: readonly FragmentType<OwnQuestionFragment>[];
  readonly properties: readonly { readonly id: string; readonly name: string }[];
}

const ALL = '';

/** What the client asked and what the office answered; and a question more. */
export function AskOffice({ questions: masked, properties }: Props) {
  const intl = useIntl();
  const { moment } = useFormats();
  const questions = useMaskedList(ownQuestion, masked);
  const [written, setWritten] = useState('');
  const [propertyId, setProperty] = useState(ALL);
  const [lacks, setLacks] = useState(false);
  const ask = useDeed(askDocument, { refetch: ['YourWater'] });
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setLacks(!written.trim());
    if (written.trim() && (await ask.run({ question: written, propertyId: propertyId || null }))) setWritten('');
  };
  return (
    <Section heading={intl.formatMessage({ id: 'yourWater.questions' }, { count: questions.length })}>
      <ul className="reports">
        {questions.map(({ id, about, question, askedAt, answer, answeredAt, dismissedAt }) => (
          <li key={id}>
            <p>
              <span className="soft">{[about, moment(askedAt)].filter(Boolean).join(', ')}</span>
              <br />
              <span className="as-written">{question}</span>
            </p>
            <p className={answer ? 'answer as-written' : 'soft'}>
              {answer ?? <FormattedMessage id={dismissedAt ? 'yourWater.closed' : 'yourWater.notAnswered'} />}
              {answer && <span className="soft"> {moment(answeredAt)}</span>}
            </p>
          </li>
        ))}
      </ul>
      <form className="form" onSubmit={(event) => void send(event)} noValidate>
        {properties.length > 1 && (
          <Select
            label={intl.formatMessage({ id: 'yourWater.about' })}
            value={propertyId}
            choices={[
              { value: ALL, words: intl.formatMessage({ id: 'yourWater.aboutAll' }) },
              ...properties.map(({ id, name }) => ({ value: id, words: name })),
            ]}
            onChange={setProperty}
          />
        )}
        <TextAreaField
          label={intl.formatMessage({ id: 'yourWater.ask' })}
          value={written}
          onChange={setWritten}
          problem={lacks && !written.trim() ? intl.formatMessage({ id: 'yourWater.ask.empty' }) : null}
        />
        {ask.problem ? <ErrorState problem={ask.problem} /> : null}
        <div className="form-end">
          <Button type="submit" isBusy={ask.isBusy}>
            <FormattedMessage id="yourWater.ask.send" />
          </Button>
        </div>
      </form>
    </Section>
  );
}
