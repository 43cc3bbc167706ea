import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ClientQuestionFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useDeed } from '../../page/use-deed.js';
import { useMasked } from '../../page/use-masked.js';
import { Button } from '../../ui/forms/Button.js';
import { TextAreaField } from '../../ui/forms/Field.js';
import { Section } from '../../ui/frame/Section.js';
import { ErrorState } from '../../ui/states/States.js';

export const clientQuestion = graphql(`
  fragment ClientQuestion on ClientQuestion {
    id
    clientName
    about
    question
    askedAt
    answer
  }
`);
const answerDocument = graphql(`
  mutation AnswerQuestion($id: ID!, $answer: String!) {
    answerQuestion(id: $id, answer: $answer) {
      id
      answer
    }
  }
`);

type Masked = FragmentType<ClientQuestionFragment> & { readonly id: string };

/** What clients have asked, the newest first, and the office's answers. */
export function Questions({ questions }: { readonly questions: readonly Masked[] }) {
  const intl = useIntl();
  if (questions.length === 0) return null;
  return (
    <Section heading={intl.formatMessage({ id: 'reports.questions' }, { count: questions.length })}>
      <ul className="mails">
        {questions.map((question) => (
          <OneQuestion key={question.id} question={question} />
        ))}
      </ul>
    </Section>
  );
}

function OneQuestion({ question: masked }: { readonly question: Masked }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { id, clientName, about, question, askedAt, answer } = useMasked(clientQuestion, masked);
  const [written, setWritten] = useState('');
  const keep = useDeed(answerDocument);
  return (
    <li>
      <p>
        <b>{clientName}</b> {about && `${about} `}
        <span className="soft">{moment(askedAt)}</span>
      </p>
      <p>{question}</p>
      {answer ? (
        <p className="soft">{answer}</p>
      ) : (
        <>
          <TextAreaField label={intl.formatMessage({ id: 'reports.answer' })} value={written} onChange={setWritten} />
          <Button isBusy={keep.isBusy} onClick={() => void keep.run({ id, answer: written })}>
            <FormattedMessage id="reports.giveAnswer" />
          </Button>
          {keep.problem ? <ErrorState problem={keep.problem} /> : null}
        </>
      )}
    </li>
  );
}
