import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useLocation } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { MailsToSettleFragment } from '../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../i18n/catalogue.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useMaskedList } from '../../page/use-masked.js';
import { Section } from '../../ui/frame/Section.js';
import { openSearch } from './urls.js';

export const mailsToSettle = graphql(`
  fragment MailsToSettle on WaterReport {
    id
    clientId
    untilOn
    mails {
      id
      recipient
      state
      answer
      attempts
    }
  }
`);

interface Props {
  readonly reports: readonly FragmentType<MailsToSettleFragment>[];
  readonly names: ReadonlyMap<string, string>;
}

const OPEN: ReadonlySet<string> = new Set(['unknown', 'refused', 'bounced']);

/** After so many tries the trouble does not pass by itself, and a person should look. */
const TRIES_UNTIL_TOLD = 3;
/** Nobody can do anything about these: who wants no more, or is no recipient any more, is not mailed. */
const SETTLED: ReadonlySet<string> = new Set(['wants-no-more', 'address-gone']);

interface Mail {
  readonly state: string;
  readonly answer?: string | null;
  readonly attempts: number;
}

const waits = ({ state, answer, attempts }: Mail): boolean =>
  !SETTLED.has(answer ?? '') && (OPEN.has(state) || (state === 'queued' && attempts >= TRIES_UNTIL_TOLD));

/** Mails that wait for a person: of which nobody knows whether they arrived, those that did not, and those that were tried in vain. */
export function MailsToSettle({ reports: masked, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { search } = useLocation();
  const reports = useMaskedList(mailsToSettle, masked);
  const open = reports.flatMap(({ id, clientId, untilOn, mails }) =>
    mails.filter(waits).map((mail) => ({ ...mail, reportId: id, month: untilOn.slice(0, 7), client: names.get(clientId) ?? '–' })),
  );
  if (open.length === 0) return null;
  return (
    <Section
      heading={intl.formatMessage({ id: 'reports.toSettle' }, { count: open.length })}
      note={<FormattedMessage id="reports.toSettle.how" />}
    >
      <ul className="mails">
        {open.map(({ id, recipient, state, reportId, month, client }) => (
          <li key={id}>
            <Link to={{ search: openSearch(search, reportId, month) }}>{client}</Link> {formats.month(month)} {recipient}{' '}
            <span className="soft">
              <FormattedMessage id={`reports.mail.${state}` as MessageId} />
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
