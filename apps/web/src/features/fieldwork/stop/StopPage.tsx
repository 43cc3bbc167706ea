import { useIntl } from 'react-intl';
import { useParams } from 'react-router';
import { Fetched } from '../../../page/Fetched.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../ui/phone/PhoneFrame.js';
import { EmptyState } from '../../../ui/states/States.js';
import { useShelved } from '../device/use-shelved.js';
import '../fieldwork.css';
import { StopSteps } from './StopSteps.js';
import { stopDocument } from '../stop-document.js';

/** A stop on the phone, in the order in which hands do it. */
export function StopPage() {
  const intl = useIntl();
  const { stopId = '' } = useParams();
  const query = useShelved(stopDocument, { id: stopId });
  const { stop } = query.data ?? {};
  if (stop) return <StopSteps key={stop.id} stop={stop} />;
  const back = { to: '/today', words: intl.formatMessage({ id: 'frame.today' }) };
  return (
    <PhoneFrame back={back}>
      <Fetched query={query}>
        {() => (
          <EmptyState
            sentence={intl.formatMessage({ id: 'field.stop.gone' })}
            action={<ButtonLink to="/today">{intl.formatMessage({ id: 'field.stop.toToday' })}</ButtonLink>}
          >
            {intl.formatMessage({ id: 'field.stop.goneHow' })}
          </EmptyState>
        )}
      </Fetched>
    </PhoneFrame>
  );
}
