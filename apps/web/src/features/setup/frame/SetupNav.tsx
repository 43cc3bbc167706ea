import { FormattedMessage, useIntl } from 'react-intl';
import { NavLink } from 'react-router';
import type { MessageId } from '../../../i18n/catalogue.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { setupPaths } from '../urls.js';

const PAGES: readonly { readonly to: string; readonly words: MessageId; readonly permission: string }[] = [
  { to: setupPaths.exchange, words: 'setup.nav.exchange', permission: 'import and export' },
  { to: setupPaths.clients, words: 'setup.nav.clients', permission: 'write portfolio' },
  { to: setupPaths.properties, words: 'setup.nav.properties', permission: 'write portfolio' },
  { to: setupPaths.suppliers, words: 'setup.nav.suppliers', permission: 'write portfolio' },
  { to: setupPaths.stations, words: 'setup.nav.stations', permission: 'write portfolio' },
  { to: setupPaths.crews, words: 'setup.nav.crews', permission: 'write portfolio' },
  { to: setupPaths.people, words: 'setup.nav.people', permission: 'manage members' },
  { to: setupPaths.brand, words: 'setup.nav.brand', permission: 'write reports' },
  { to: setupPaths.organization, words: 'setup.nav.organization', permission: 'manage organization' },
];

/** The pages of Setup that this person has. */
export function SetupNav() {
  const intl = useIntl();
  const viewer = useViewer();
  return (
    <nav className="setup-nav" aria-label={intl.formatMessage({ id: 'setup.nav' })}>
      {PAGES.filter(({ permission }) => mayDo(viewer, permission)).map(({ to, words }) => (
        <NavLink key={to} to={to} end={to === setupPaths.exchange}>
          <FormattedMessage id={words} />
        </NavLink>
      ))}
    </nav>
  );
}
