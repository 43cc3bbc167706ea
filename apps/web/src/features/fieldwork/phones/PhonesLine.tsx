import { useQuery } from '@apollo/client/react';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import './phones.css';
import { phonesDocument } from './phones-document.js';
import { ASK_AGAIN_MS } from './PhonesPage.js';
import { phonesPath } from './urls.js';

/** One line above the routes: what phones still hold and what somebody should look at. */
export function PhonesLine() {
  const { data } = useQuery(phonesDocument, { fetchPolicy: 'cache-and-network', pollInterval: ASK_AGAIN_MS });
  if (!data || data.devices.length === 0) return null;
  const unsent = data.devices.filter(({ waiting, photosWaiting }) => waiting + photosWaiting > 0).length;
  return (
    <p className="phones-line">
      <FormattedMessage id="phones.line" values={{ phones: data.devices.length, unsent, open: data.openOperations.length }} />{' '}
      <Link to={phonesPath}>
        <FormattedMessage id="phones.tab" />
      </Link>
    </p>
  );
}
