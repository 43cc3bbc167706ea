import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { areOwn, disputedIn } from '../../../offline/outbox.js';
import { useOutbox, usePhone, useWaiting, useRoom } from '../../../offline/PhoneProvider.js';
import { NewVersion } from './NewVersion.js';
import { PHONE_PATH } from '../urls.js';

interface Props {
  /** Whether the page is one where nothing is written. */
  readonly isBetween?: boolean;
}

/** The line above the dock: what waits on this phone, what was refused, and when something was last sent. Counted from the outbox itself. */
export function SentLine({ isBetween = false }: Props) {
  const phone = usePhone();
  const room = useRoom();
  if (room?.state === 'full' && phone.trouble === null && !phone.isOldPage)
    return (
      <Link to={PHONE_PATH}>
        <b>
          <FormattedMessage id="field.phone.full" />
        </b>
      </Link>
    );
  return phone.trouble !== null || phone.isOldPage ? (
    <b>
      <FormattedMessage id={phone.isOldPage ? 'field.phone.oldPage' : 'field.phone.notSaved'} />
    </b>
  ) : (
    <Link to={PHONE_PATH}>
      <Counts />
      <NewVersion isBetween={isBetween} />
    </Link>
  );
}

function Counts() {
  const { time } = useFormats();
  const outbox = useOutbox();
  const { lastSentAt } = outbox;
  const disputed = disputedIn(outbox);
  const { waiting, photos, refused, underWay } = useWaiting();
  if (refused > 0) return <FormattedMessage id="field.sent.refused" values={{ refused, waiting }} />;
  if (disputed.length > 0) {
    const values = { disputed: disputed.length, isSelf: String(areOwn(disputed)), waiting: waiting + photos };
    return <FormattedMessage id="field.sent.disputed" values={values} />;
  }
  if (waiting + photos > 0)
    return (
      <FormattedMessage
        id="field.sent.waits"
        values={{ waiting, photos, last: lastSentAt ? time(lastSentAt) : 'never', isUnderWay: String(underWay > 0) }}
      />
    );
  return lastSentAt ? (
    <FormattedMessage id="field.sent.last" values={{ time: time(lastSentAt) }} />
  ) : (
    <FormattedMessage id="field.sent.nothing" />
  );
}
