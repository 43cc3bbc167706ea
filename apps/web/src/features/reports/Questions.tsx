import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ClientQuestionFragment } from '../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../i18n/catalogue.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useDeed } from '../../page/use-deed.js';
import { useMaskedList } from '../../page/use-masked.js';
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
    email
    mailState
    dismissedAt
  }
`);
const answerDocument = graphql(`
  mutation AnswerQuestion($id: ID!, $answer: String!) {
    answerQuestion(id: $id, answer: $answer) {
      id
      answer
      answeredAt
      mailState
      dismissedAt
    }
  }
`);

const dismissDocument = graphql(`
  mutation DismissQuestion($id: ID!, $dismissed: Boolean!) {
    dismissQuestion(id: $id, dismissed: $dismissed) {
      id
      dismissedAt
    }
  }
`);

type Masked = FragmentType<ClientQuestionFragment> & { readonly id: string };

/** What clients have asked, the newest first: what waits for an answer, and behind one press what was answered or put away. */
export function Questions({ questions: masked }: { readonly questions: readonly Masked[] }) {
  const intl = useIntl();
  const questions = useMaskedList(clientQuestion, masked);
  if (questions.length === 0) return null;
  const waiting = questions.filter(({ answer, dismissedAt }) => !answer && !dismissedAt);
  const settled = questions.filter((question) => !waiting.includes(question));
  return (
    <Section heading={intl.formatMessage({ id: 'reports.questions' }, { count: waiting.length })}>
      <ul className="mails">
        {waiting.map((question) => (
          <OneQuestion key={question.id} question={question} />
        ))}
      </ul>
      {settled.length > 0 && (
        <details>
          <summary>
            <FormattedMessage id="reports.questions.settled" values={{ count: settled.length }} />
          </summary>
          <ul className="mails">
            {settled.map((question) => (
              <OneQuestion key={question.id} question={question} />
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}

function OneQuestion({ question: asked }: { readonly question: ClientQuestionFragment }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { id, clientName, about, question, askedAt, answer, email, mailState, dismissedAt } = asked;
  const [written, setWritten] = useState('');
  const keep = useDeed(answerDocument);
  const dismiss = useDeed(dismissDocument);
  const problem = keep.problem ?? dismiss.problem;
  const putAway = (dismissed: boolean) => () => void dismiss.run({ id, dismissed });
  return (
    <li>
      <p>
        <b>{clientName}</b> {about && `${about} `}
        <span className="soft">{moment(askedAt)}</span>
      </p>
      <p>{question}</p>
      {answer && (
        <p className="soft">
          {answer} {mailState && <FormattedMessage id={`reports.answerMail.${mailState}` as MessageId} values={{ email }} />}
        </p>
      )}
      {dismissedAt && (
        <p className="soft">
          <FormattedMessage id="reports.dismissed" />{' '}
          <Button kind="plain" isBusy={dismiss.isBusy} onClick={putAway(false)}>
            <FormattedMessage id="reports.dismiss.back" />
          </Button>
        </p>
      )}
      {!answer && !dismissedAt && (
        <>
          <TextAreaField
            label={intl.formatMessage({ id: 'reports.answer' })}
            hint={intl.formatMessage({ id: email ? 'reports.answer.byMail' : 'reports.answer.shown' }, { email })}
            value={written}
            onChange={setWritten}
          />
          <p className="form-end">
            <Button isBusy={keep.isBusy} onClick={() => void keep.run({ id, answer: written })}>
              <FormattedMessage id="reports.giveAnswer" />
            </Button>
            <Button kind="plain" isBusy={dismiss.isBusy} onClick={putAway(true)}>
              <FormattedMessage id="reports.dismiss" />
            </Button>
          </p>
        </>
      )}
      {problem ? <ErrorState problem={problem} /> : null}
    </li>
  );
}
