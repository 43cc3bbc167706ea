import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { OpenWordFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useDeed } from '../../../page/use-deed.js';
import { wordOf } from '../../../says/saying.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { fieldsOf, type SaidLine, saidLines } from './said.js';

graphql(`
  fragment OpenWord on OpenOperation {
    key
    kind
    verdict
    by
    body
    other
    stands
    subject
    savedAt
    problem {
      code
      message
    }
    property {
      id
      name
    }
  }
`);

const chooseDocument = graphql(`
  mutation ChooseWord($key: ID!, $word: String!) {
    chooseWord(key: $key, word: $word) {
      key
    }
  }
`);

const settleDocument = graphql(`
  mutation SettleOperation($key: ID!) {
    settleOperation(key: $key) {
      key
    }
  }
`);

/** Settles what somebody has looked at, or lets one of the two words stand. */
function useSettling(key: string) {
  const intl = useIntl();
  const toast = useToast();
  const choose = useDeed(chooseDocument, { refetch: ['Phones'] });
  const settle = useDeed(settleDocument, { refetch: ['Phones'] });
  const say = (done: unknown): void => {
    if (done) toast({ words: intl.formatMessage({ id: 'phones.settled' }) });
  };
  return {
    choose: async (word: 'sent' | 'other') => say(await choose.run({ key, word })),
    settle: async () => say(await settle.run({ key })),
    isBusy: choose.isBusy || settle.isBusy,
    problem: choose.problem ?? settle.problem,
  };
}

interface Props {
  readonly operation: OpenWordFragment;
}

/** Something that two people said differently, or that could not be done: both words with their authors, and what to do. */
export function OpenWord({ operation }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { key, kind, verdict, body, savedAt, problem } = operation;
  const settling = useSettling(key);
  const by = operation.by ?? intl.formatMessage({ id: 'phones.somebody' });
  const other = (operation.other ?? {}) as Readonly<Record<string, unknown>>;
  const otherBy = typeof other['by'] === 'string' ? other['by'] : intl.formatMessage({ id: 'phones.somebodyElse' });
  const lines = saidLines({ intl, formats }, kind, fieldsOf(body), other);
  return (
    <li>
      <Heading operation={operation} />
      <p>
        <FormattedMessage
          id={verdict === 'refused' ? 'phones.refused' : 'phones.conflict'}
          values={{ by, other: otherBy, when: formats.moment(savedAt) }}
        />
      </p>
      {problem && <p>{problem.message}</p>}
      {lines.length > 0 && <BothWords lines={lines} by={by} otherBy={otherBy} stands={operation.stands ?? null} />}
      {settling.problem ? <ErrorState problem={settling.problem} /> : null}
      <Choices stands={operation.stands ?? null} by={by} otherBy={otherBy} settling={settling} />
    </li>
  );
}

/** What it is about. */
function Heading({ operation: { kind, subject, property } }: Props) {
  const intl = useIntl();
  return (
    <h3>
      {[wordOf(intl, 'phones.what', kind), subject].filter(Boolean).join(', ')}
      {property && (
        <>
          {' · '}
          <Link to={paths.property(property.id)}>{property.name}</Link>
        </>
      )}
    </h3>
  );
}

interface ChoicesProps {
  readonly stands: string | null;
  readonly by: string;
  readonly otherBy: string;
  readonly settling: ReturnType<typeof useSettling>;
}

/** One of two words, or only that somebody has looked. */
function Choices({ stands, by, otherBy, settling }: ChoicesProps) {
  return (
    <div className="form-end">
      {stands ? (
        (['sent', 'other'] as const).map((word) => (
          <Button key={word} isBusy={settling.isBusy} onClick={() => void settling.choose(word)}>
            <FormattedMessage id={word === stands ? 'phones.leave' : 'phones.put'} values={{ by: word === 'sent' ? by : otherBy }} />
          </Button>
        ))
      ) : (
        <Button isBusy={settling.isBusy} onClick={() => void settling.settle()}>
          <FormattedMessage id="phones.seen" />
        </Button>
      )}
    </div>
  );
}

interface BothProps {
  readonly lines: readonly SaidLine[];
  readonly by: string;
  readonly otherBy: string;
  readonly stands: string | null;
}

/** The two words beside each other, only what differs. */
function BothWords({ lines, by, otherBy, stands }: BothProps) {
  const intl = useIntl();
  const head = (who: string, isStanding: boolean) => (
    <Head>
      {who}
      {isStanding && <> · {intl.formatMessage({ id: 'phones.stands' })}</>}
    </Head>
  );
  return (
    <Table
      isTight
      name={intl.formatMessage({ id: 'phones.both' })}
      head={
        <tr>
          <Head>
            <FormattedMessage id="phones.differs" />
          </Head>
          {head(by, stands === 'sent')}
          {head(otherBy, stands === 'other')}
        </tr>
      }
    >
      {lines.map(({ field, label, sent, other }) => (
        <tr key={field}>
          <th scope="row">{label}</th>
          <td>{sent}</td>
          <td>{other}</td>
        </tr>
      ))}
    </Table>
  );
}
