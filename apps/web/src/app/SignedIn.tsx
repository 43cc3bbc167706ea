import { useQuery } from '@apollo/client/react';
import { Navigate, Outlet, useLocation } from 'react-router';
import { signInAddress } from '../graphql/client.js';
import { LanguageProvider } from '../i18n/LanguageProvider.js';
import { ViewerContext, viewerDocument } from '../session/viewer.js';
import { ToastProvider } from '../ui/dialogs/Toasts.js';
import { ErrorState, LoadingState } from '../ui/states/States.js';

/** Everything behind the door: it knows who is here, and speaks their language in their organization's units. */
export function SignedIn() {
  const { data, loading, error, refetch } = useQuery(viewerDocument);
  const { pathname, search } = useLocation();
  if (error && !data) return <ErrorState problem={error} onRetry={() => void refetch()} />;
  if (loading && !data) return <LoadingState />;
  if (!data?.me) return <Navigate to={signInAddress(pathname + search)} replace />;
  const { person, organization } = data.me;
  return (
    <LanguageProvider
      language={person.language}
      units={organization.units}
      currency={organization.currency}
      timeZone={organization.timeZone}
    >
      <ViewerContext value={data.me}>
        <ToastProvider>
          <Outlet />
        </ToastProvider>
      </ViewerContext>
    </LanguageProvider>
  );
}
