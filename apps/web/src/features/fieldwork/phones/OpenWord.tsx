import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { OpenWordFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { problemSentence } from '../../../i18n/problems/problem-sentence.js';
import { paths } from '../../../page/paths.js';
import { wordOf } from '../../../says/saying.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { bothSayers } from './who-said.js';
import { useSettling } from './use-settling.js';
import { fieldsOf, type SaidLine, saidLines, sentLines } from './said.js';

graphql(`
  fragment OpenWord on OpenOperation {
    key
    kind
    verdict
    by
    phone
    body
    other
    stands
    subject
    savedAt
    problem {
      code
      message
      details
    }
    property {
      id
      name
    }
  }
`);

interface Props {
  readonly operation: OpenWordFragment;
}

/** Something that two people said differently, or that could not be done: all that was said, with its authors, and what to do. */
export function OpenWord({ operation }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { key, kind, verdict, body, savedAt, problem } = operation;
  const settling = useSettling(key);
  const by = operation.by ?? intl.formatMessage({ id: 'phones.somebody' });
  const other = (operation.other ?? {}) as Readonly<Record<string, unknown>>;
  const { long, short } = bothSayers({ intl, formats }, { by, phone: operation.phone, savedAt }, other);
  const lines = saidLines({ intl, formats }, kind, fieldsOf(body), other);
  return (
    <li>
      <Heading operation={operation} />
      <p>
        <FormattedMessage id={sentenceOf(verdict)} values={{ by: long.by, other: long.otherBy }} />
      </p>
      {problem && <p>{problemSentence(intl.locale, problem)}</p>}
      {lines.length > 0 ? <BothWords lines={lines} {...short} stands={operation.stands ?? null} /> : <AllSaid kind={kind} body={body} />}
      {settling.problem ? <ErrorState problem={settling.problem} /> : null}
      <Choices stands={operation.stands ?? null} isRefused={verdict === 'refused'} {...short} settling={settling} />
    </li>
  );
}

const sentenceOf = (verdict: string) =>
  verdict === 'refused' ? 'phones.refused' : verdict === 'parallel' ? 'phones.parallel' : 'phones.conflict';

/** What the phone said, all of it. */
function AllSaid({ kind, body }: { readonly kind: string; readonly body: string }) {
  const intl = useIntl();
  const formats = useFormats();
  const lines = sentLines({ intl, formats }, kind, fieldsOf(body));
  if (lines.length === 0) return <pre className="as-it-came">{body}</pre>;
  return (
    <dl className="all-said">
      {lines.map(({ field, label, sent }) => (
        <div key={field}>
          <dt>{label}</dt>
          <dd>{sent}</dd>
        </div>
      ))}
    </dl>
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
  readonly isRefused: boolean;
  readonly by: string;
  readonly otherBy: string;
  readonly settling: ReturnType<typeof useSettling>;
}

/** One of two words; to do what was refused after all; or only that somebody has looked. */
function Choices({ stands, isRefused, by, otherBy, settling }: ChoicesProps) {
  return (
    <div className="form-end">
      {stands ? (
        (['sent', 'other'] as const).map((word) => (
          <Button key={word} isBusy={settling.isBusy} onClick={() => void settling.choose(word)}>
            <FormattedMessage id={word === stands ? 'phones.leave' : 'phones.put'} values={{ by: word === 'sent' ? by : otherBy }} />
          </Button>
        ))
      ) : (
        <>
          {isRefused && (
            <Button isBusy={settling.isBusy} onClick={() => void settling.takeIn()}>
              <FormattedMessage id="phones.takeIn" />
            </Button>
          )}
          <Button isBusy={settling.isBusy} onClick={() => void settling.settle()}>
            <FormattedMessage id="phones.seen" />
          </Button>
        </>
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
