import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DeviceOfListFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMaskedList } from '../../../page/use-masked.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { isOlder } from './versions.js';

const deviceOfList = graphql(`
  fragment DeviceOfList on Device {
    id
    name
    person
    appVersion
    heardAt
    silentDays
    waiting
    photosWaiting
    refused
    oldestWaitingAt
  }
`);

/** A phone that holds something and was not heard of for so long is asked after. */
const LONG_SILENT_DAYS = 2;

interface Props {
  readonly devices: readonly FragmentType<DeviceOfListFragment>[];
}

/** Each phone as it was last heard of: whose, when, what it still holds. */
export function DeviceList({ devices: masked }: Props) {
  const devices = useMaskedList(deviceOfList, masked);
  return (
    <ul className="devices">
      {devices.map((device) => (
        <DeviceLine key={device.id} device={device} />
      ))}
    </ul>
  );
}

const forgetDocument = graphql(`
  mutation ForgetDevice($id: ID!) {
    forgetDevice(id: $id) {
      id
    }
  }
`);

/** A phone that was lost or given back is taken off the list by hand; heard again it comes back by itself. */
function ForgetDevice({ id }: { readonly id: string }) {
  const intl = useIntl();
  const toast = useToast();
  const forget = useDeed(forgetDocument, { refetch: ['Phones'] });
  const run = async (): Promise<void> => {
    if (await forget.run({ id })) toast({ words: intl.formatMessage({ id: 'phones.forgotten' }) });
  };
  return (
    <>
      {forget.problem ? <ErrorState problem={forget.problem} /> : null}
      <Button kind="plain" isBusy={forget.isBusy} onClick={() => void run()}>
        <FormattedMessage id="phones.forget" />
      </Button>
    </>
  );
}

function DeviceLine({ device }: { readonly device: DeviceOfListFragment }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { name, person, appVersion, heardAt, silentDays, waiting, photosWaiting, refused, oldestWaitingAt } = device;
  const holds = waiting + photosWaiting > 0;
  const notes = [
    holds && oldestWaitingAt ? intl.formatMessage({ id: 'phones.oldest' }, { when: moment(oldestWaitingAt) }) : null,
    holds && silentDays >= LONG_SILENT_DAYS ? intl.formatMessage({ id: 'phones.silent' }, { days: silentDays }) : null,
    isOlder(appVersion ?? null, __APP_VERSION__) ? intl.formatMessage({ id: 'phones.old' }, { version: appVersion }) : null,
  ].filter((note) => note !== null);
  return (
    <li>
      <p>
        <b>{person ?? intl.formatMessage({ id: 'phones.nobody' })}</b>{' '}
        <span className="soft">
          {[name, intl.formatMessage({ id: 'phones.heard' }, { when: moment(heardAt) })].filter(Boolean).join(' · ')}
        </span>
      </p>
      <p>
        <FormattedMessage id="phones.holds" values={{ waiting, photos: photosWaiting, refused }} />
      </p>
      {notes.map((note) => (
        <p key={note} className="soft">
          {note}
        </p>
      ))}
      {silentDays >= LONG_SILENT_DAYS && <ForgetDevice id={device.id} />}
    </li>
  );
}
