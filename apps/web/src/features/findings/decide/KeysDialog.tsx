import { FormattedMessage, useIntl } from 'react-intl';
import type { MessageId } from '../../../i18n/catalogue.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { Kbd } from '../../../ui/tables/Kbd.js';

const KEYS: readonly { readonly keys: readonly string[]; readonly words: MessageId; readonly decides?: true }[] = [
  { keys: ['j', 'k'], words: 'findings.help.move' },
  { keys: ['Enter'], words: 'findings.help.open' },
  { keys: ['a'], words: 'findings.help.accept', decides: true },
  { keys: ['s'], words: 'findings.help.wait', decides: true },
  { keys: ['d'], words: 'findings.help.dismiss', decides: true },
  { keys: ['r'], words: 'findings.help.resolve', decides: true },
  { keys: ['?'], words: 'findings.help.help' },
];

/** All keys of the page. */
export function KeysDialog({ mayDecide, onClose }: { readonly mayDecide: boolean; readonly onClose: () => void }) {
  const intl = useIntl();
  return (
    <Dialog isOpen heading={intl.formatMessage({ id: 'findings.help.title' })} onClose={onClose}>
      <dl className="key-list">
        {KEYS.filter(({ decides }) => mayDecide || !decides).map(({ keys, words }) => (
          <div key={words}>
            <dt>
              {keys.map((key) => (
                <Kbd key={key}>{key}</Kbd>
              ))}
            </dt>
            <dd>
              <FormattedMessage id={words} />
            </dd>
          </div>
        ))}
      </dl>
    </Dialog>
  );
}
