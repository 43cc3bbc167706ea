import { useQuery } from '@apollo/client/react';
import { useEffect, useMemo, useState } from 'react';
import { Navigate, Outlet, useLocation } from 'react-router';
import { signInAddress } from '../graphql/client.js';
import { LanguageProvider } from '../i18n/LanguageProvider.js';
import { problemOf } from '../graphql/problem.js';
import { isSignOutOwed } from '../session/owed-sign-out.js';
import { rememberedViewer, rememberViewer } from '../session/remembered-viewer.js';
import { useDrawn } from '../session/use-drawn.js';
import { ViewerContext, viewerDocument } from '../session/viewer.js';
import { ToastProvider } from '../ui/dialogs/Toasts.js';
import { ErrorState, LoadingState } from '../ui/states/States.js';

/** So long a person waits for a line that hangs before they go on as without signal. */
const LATE_MS = 4000;

function useIsLate(isWaiting: boolean): boolean {
  const [isLate, setLate] = useState(false);
  useEffect(() => {
    if (!isWaiting) return;
    const late = setTimeout(() => setLate(true), LATE_MS);
    return () => clearTimeout(late);
  }, [isWaiting]);
  return isLate;
}

/** Nobody answers a device that knows that it has no line, or one that asked long ago. */
const isAway = (isLate: boolean, error: unknown): boolean =>
  !navigator.onLine || isLate || (error !== undefined && problemOf(error).kind === 'noAnswer');

/** Who is here: as the server tells, or without signal whoever was here last; it asks again as soon as the server is reached. */
function useWho() {
  // Who signed out without signal is not let in again by what the browser still holds.
  const isOwed = isSignOutOwed();
  const isDrawn = useDrawn();
  const { data, loading, error, refetch } = useQuery(viewerDocument, { skip: isOwed || !isDrawn });
  const told = data?.me ?? null;
  useEffect(() => {
    if (told) rememberViewer(told);
  }, [told]);
  const isLate = useIsLate(loading && told === null);
  const isAlone = told === null && (!isDrawn || isAway(isLate, error));
  const known = useMemo(() => (isAlone ? rememberedViewer(new Date()) : null), [isAlone]);
  return { viewer: told ?? known, loading, error, refetch };
}

/** Everything behind the door: it knows who is here, and speaks their language in their organization's units. */
export function SignedIn() {
  const { viewer, loading, error, refetch } = useWho();
  const { pathname, search } = useLocation();
  if (error && !viewer) return <ErrorState problem={error} onRetry={() => void refetch()} />;
  if (loading && !viewer) return <LoadingState />;
  if (!viewer) return <Navigate to={signInAddress(pathname + search)} replace />;
  const { person, organization } = viewer;
  return (
    <LanguageProvider
      language={person.language}
      units={organization.units}
      currency={organization.currency}
      timeZone={organization.timeZone}
    >
      <ViewerContext value={viewer}>
        <ToastProvider>
          <Outlet />
        </ToastProvider>
      </ViewerContext>
    </LanguageProvider>
  );
}
