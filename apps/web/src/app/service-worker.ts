import { cleanupOutdatedCaches, createHandlerBoundToURL, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

/** What of the worker's own scope is used; the pages' types know no such scope. */
interface WorkerScope {
  readonly __WB_MANIFEST: readonly (PrecacheEntry | string)[];
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
  readonly addEventListener: (
    type: 'message' | 'activate',
    listener: (event: { readonly data?: unknown; readonly waitUntil: (work: Promise<unknown>) => void }) => void,
  ) => void;
}

// The pages of this version, all of them: what a link leads to opens without signal.
precacheAndRoute([...(self as unknown as WorkerScope).__WB_MANIFEST]);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('/index.html'), { denylist: [/^\/(graphql|api|health|assets)(\/|$)/] }));

const scope = self as unknown as WorkerScope;

// A newer version waits until a page with nothing half written says so.
scope.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(scope.skipWaiting());
});
// The first visit is served from the phone too.
scope.addEventListener('activate', (event) => event.waitUntil(scope.clients.claim()));
