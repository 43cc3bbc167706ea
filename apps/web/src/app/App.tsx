import { ApolloProvider } from '@apollo/client/react';
import { useMemo } from 'react';
import { BrowserRouter } from 'react-router';
import { makeClient, signInAddress } from '../graphql/client.js';
import { LanguageProvider } from '../i18n/LanguageProvider.js';
import { DisplayProvider } from '../ui/theme/DisplayProvider.js';
import { firstLanguage } from './first-language.js';
import { AppRoutes } from './Routes.js';

const leaveForDoor = (): void => {
  const { pathname, search } = window.location;
  window.location.assign(signInAddress(pathname + search));
};

/** The whole product in its providers. */
export function App() {
  const language = useMemo(firstLanguage, []);
  const client = useMemo(() => makeClient({ onSignedOut: leaveForDoor }), []);
  return (
    <DisplayProvider>
      <LanguageProvider language={language} units="us" currency="USD" timeZone={Intl.DateTimeFormat().resolvedOptions().timeZone}>
        <ApolloProvider client={client}>
          {/* An address that changes in a transition and a query that follows it throw each other back for ever. */}
          <BrowserRouter useTransitions={false}>
            <AppRoutes />
          </BrowserRouter>
        </ApolloProvider>
      </LanguageProvider>
    </DisplayProvider>
  );
}
