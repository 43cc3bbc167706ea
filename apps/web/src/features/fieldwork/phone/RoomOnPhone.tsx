import { FormattedMessage } from 'react-intl';
import { useRoom } from '../../../offline/PhoneProvider.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';

const MEGABYTE = 1024 * 1024;

/** How much of the phone's room is taken, and what to do before it is all. */
export function RoomOnPhone() {
  const { number } = useFormats();
  const room = useRoom();
  if (!room) return null;
  const megabytes = (bytes: number): string => `${number(bytes / MEGABYTE, 0)} MB`;
  return (
    <p className={room.state === 'plenty' ? 'where' : 'problem'} role="status">
      <FormattedMessage id="field.phone.room" values={{ used: megabytes(room.used), whole: megabytes(room.whole) }} />{' '}
      {room.state !== 'plenty' && <FormattedMessage id={room.state === 'full' ? 'field.phone.full' : 'field.phone.tight'} />}
    </p>
  );
}
