import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { Fetched } from '../../../page/Fetched.js';
import { paths } from '../../../page/paths.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { Section } from '../../../ui/frame/Section.js';
import { EmptyState } from '../../../ui/states/States.js';
import '../fieldwork.css';
import { DeviceList } from './DeviceList.js';
import { OpenWord } from './OpenWord.js';
import './phones.css';
import { phonesDocument } from './phones-document.js';
import { TakeFile } from './taken-file/TakeFile.js';

/** How often the page asks again while it is open: phones are heard when they have signal. [ms] */
export const ASK_AGAIN_MS = 30_000;

/** What phones still hold, and what of their words somebody should look at. */
export function PhonesPage() {
  const intl = useIntl();
  const query = useQuery(phonesDocument, { fetchPolicy: 'cache-and-network', pollInterval: ASK_AGAIN_MS });
  const shown = { ...query, data: query.data ?? query.previousData };
  return (
    <Fetched query={shown}>
      {({ devices, openOperations }) => (
        <>
          <PageHead
            crumb={
              <Link to={paths.routes}>
                <FormattedMessage id="frame.routes" />
              </Link>
            }
            sentence={intl.formatMessage(
              { id: 'phones.title' },
              {
                open: openOperations.length,
                unsent: devices.reduce((sum, { waiting, photosWaiting }) => sum + waiting + photosWaiting, 0),
              },
            )}
            tab={intl.formatMessage({ id: 'phones.tab' })}
          />
          {openOperations.length > 0 && (
            <Section heading={intl.formatMessage({ id: 'phones.open' }, { count: openOperations.length })}>
              <ol className="open-words">
                {openOperations.map((operation) => (
                  <OpenWord key={operation.key} operation={operation} />
                ))}
              </ol>
            </Section>
          )}
          <Section heading={intl.formatMessage({ id: 'phones.devices' }, { count: devices.length })}>
            {devices.length === 0 ? (
              <EmptyState sentence={intl.formatMessage({ id: 'phones.none' })}>
                <FormattedMessage id="phones.noneHow" />
              </EmptyState>
            ) : (
              <DeviceList devices={devices} />
            )}
          </Section>
          <Section heading={intl.formatMessage({ id: 'phones.fileHeading' })}>
            <TakeFile />
          </Section>
        </>
      )}
    </Fetched>
  );
}
