/** A newer version of the pages that has come and waits. */
let waiting: ServiceWorker | null = null;
/** Whether the pages themselves are on this device: only then does anything open without signal. */
let areKept = false;
const listeners = new Set<() => void>();

const tell = (): void => {
  for (const listener of listeners) listener();
};

function found(worker: ServiceWorker | null): void {
  waiting = worker;
  tell();
}

/** Keeps the pages on this device, so that they open without signal, and watches for a newer version. */
export async function keepPages(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  void navigator.serviceWorker.ready.then(() => {
    areKept = true;
    tell();
  });
  const registration = await navigator.serviceWorker.register('/service-worker.js');
  const look = (): void => {
    // The first version takes over by itself: there is nothing older to wait for.
    if (registration.waiting && navigator.serviceWorker.controller) found(registration.waiting);
  };
  look();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
}

export const onNewVersion = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const arePagesKept = (): boolean => areKept;

/** Whether a newer version waits for this page to be done. */
export const isNewVersionReady = (): boolean => waiting !== null;

/** Goes over to the newer version; the page is loaded again. Only a page with nothing half written asks for it. */
export function takeNewVersion(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true });
  waiting?.postMessage('take over');
}
