import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { SharedReportFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../page/use-deed.js';
import { useRecordName } from '../../../page/work/use-record-name.js';
import { useMasked } from '../../../page/use-masked.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

export const sharedReport = graphql(`
  fragment SharedReport on WaterReport {
    id
    state
    links {
      id
      createdAt
      expiresAt
      revokedAt
      visits
      downloads
    }
  }
`);
const shareDocument = graphql(`
  mutation ShareReport($id: ID!, $name: ID!) {
    shareReport(reportId: $id, deviceRecordId: $name) {
      id
      path
    }
  }
`);
const revokeDocument = graphql(`
  mutation RevokeShareLink($id: ID!) {
    revokeShareLink(id: $id) {
      id
      revokedAt
    }
  }
`);

/** Links that show the report to whoever has them; a link is told once, when it is made. */
export function ShareLinks({ report: masked }: { readonly report: FragmentType<SharedReportFragment> }) {
  const { moment } = useFormats();
  const { id, state, links } = useMasked(sharedReport, masked);
  const [made, setMade] = useState<string | null>(null);
  const share = useDeed(shareDocument, { refetch: ['OneReport'] });
  const revoke = useDeed(revokeDocument, { refetch: ['OneReport'] });
  const { nameOf, forget } = useRecordName();
  if (state === 'draft') return null;
  const make = async (): Promise<void> => {
    const answer = await share.run({ id, name: nameOf({ id }) });
    if (!answer) return;
    forget();
    if (answer.shareReport.path) setMade(`${window.location.origin}${answer.shareReport.path}`);
  };
  const problem = share.problem ?? revoke.problem;
  return (
    <>
      <p className="form-end">
        <Button isBusy={share.isBusy} onClick={() => void make()}>
          <FormattedMessage id="reports.share" />
        </Button>
      </p>
      {made && (
        <p className="made-link" role="status">
          <FormattedMessage id="reports.shareMade" /> <a href={made}>{made}</a>
        </p>
      )}
      {links.length > 0 && (
        <ul className="mails">
          {links.map((link) => (
            <li key={link.id}>
              <FormattedMessage
                id="reports.link"
                values={{ made: moment(link.createdAt), ends: moment(link.expiresAt), visits: link.visits, downloads: link.downloads }}
              />{' '}
              {link.revokedAt ? (
                <span className="soft">
                  <FormattedMessage id="reports.linkRevoked" />
                </span>
              ) : (
                <Button kind="plain" isBusy={revoke.isBusy} onClick={() => void revoke.run({ id: link.id })}>
                  <FormattedMessage id="reports.revoke" />
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
      {problem ? <ErrorState problem={problem} /> : null}
    </>
  );
}
