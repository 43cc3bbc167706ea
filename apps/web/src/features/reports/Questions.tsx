import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useLocation } from 'react-router';
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
import { openSearch } from './urls.js';

export const clientQuestion = graphql(`
  fragment ClientQuestion on ClientQuestion {
    id
    clientName
    about
    byLink
    report {
      id
      fromOn
      untilOn
    }
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

/** Where the questions stand on the page. */
const PLACE = 'questions';

type Masked = FragmentType<ClientQuestionFragment> & { readonly id: string };

const isWaiting = ({ answer, dismissedAt }: Pick<ClientQuestionFragment, 'answer' | 'dismissedAt'>): boolean => !answer && !dismissedAt;

/** That a question waits is said before the list, under which it stands. */
export function WaitingQuestions({ questions: masked }: { readonly questions: readonly Masked[] }) {
  const count = useMaskedList(clientQuestion, masked).filter(isWaiting).length;
  if (count === 0) return null;
  return (
    <p>
      <a href={`#${PLACE}`}>
        <FormattedMessage id="reports.questions" values={{ count }} />
      </a>
    </p>
  );
}

/** What clients have asked, the newest first: what waits for an answer, and behind one press what was answered or put away. */
export function Questions({ questions: masked }: { readonly questions: readonly Masked[] }) {
  const intl = useIntl();
  const questions = useMaskedList(clientQuestion, masked);
  if (questions.length === 0) return null;
  const waiting = questions.filter(isWaiting);
  const settled = questions.filter((question) => !waiting.includes(question));
  return (
    <Section id={PLACE} heading={intl.formatMessage({ id: 'reports.questions' }, { count: waiting.length })}>
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

/** Who asked, about what and when. */
function Asked({ asked: { clientName, about, report, byLink, askedAt } }: { readonly asked: ClientQuestionFragment }) {
  const { days, moment } = useFormats();
  const { search } = useLocation();
  return (
    <p>
      <b>{clientName}</b> {about && `${about} `}
      {report && (
        <Link to={{ search: openSearch(search, report.id, report.untilOn.slice(0, 7)) }}>
          <FormattedMessage id="reports.questions.report" values={{ days: days(report.fromOn, report.untilOn) }} />
        </Link>
      )}{' '}
      {byLink && (
        <span className="soft">
          <FormattedMessage id="reports.questions.byLink" />{' '}
        </span>
      )}
      <span className="soft">{moment(askedAt)}</span>
    </p>
  );
}

function OneQuestion({ question: asked }: { readonly question: ClientQuestionFragment }) {
  const intl = useIntl();
  const { id, question, answer, email, mailState, dismissedAt } = asked;
  const [written, setWritten] = useState('');
  const keep = useDeed(answerDocument);
  const dismiss = useDeed(dismissDocument);
  const problem = keep.problem ?? dismiss.problem;
  const putAway = (dismissed: boolean) => () => void dismiss.run({ id, dismissed });
  return (
    <li>
      <Asked asked={asked} />
      <p className="as-written">{question}</p>
      {answer && (
        <p className="soft as-written">
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
