const ADDRESS = '/api/live/fieldwork';
/** How often the page asks while nothing tells it. [ms] */
const ASK_MS = 30_000;
/** When the way is tried again that the server or something between has closed. [ms] */
const AGAIN_MS = 60_000;

interface Listener {
  /** Something has changed, or may have. */
  readonly onChange: () => void;
  /** Whether changes are told as they happen; otherwise they are asked for now and then. */
  readonly onLive: (isLive: boolean) => void;
}

/** Hears of what happens in the field, and asks now and then while it cannot hear. The answer ends that. */
export function listenToDay({ onChange, onLive }: Listener): () => void {
  let isLive = false;
  let isEnough = false;
  let source: EventSource | null = null;
  let again: ReturnType<typeof setTimeout> | undefined;
  const told = (now: boolean): void => {
    // Something may have happened while nothing could be heard.
    if (now && !isLive) onChange();
    isLive = now;
    onLive(now);
  };
  const open = (): void => {
    source = new EventSource(ADDRESS);
    source.onopen = () => told(true);
    source.onmessage = onChange;
    // The person has opened more pages than are kept open: this one listens again when it is looked at.
    source.addEventListener('enough', () => {
      source?.close();
      isEnough = true;
      told(false);
    });
    source.onerror = () => {
      told(false);
      // What broke the browser mends by itself; what was refused or not understood it leaves closed.
      if (source?.readyState === EventSource.CLOSED) again = setTimeout(open, AGAIN_MS);
    };
  };
  const looked = (): void => {
    if (document.visibilityState !== 'visible' || !isEnough) return;
    isEnough = false;
    open();
  };
  document.addEventListener('visibilitychange', looked);
  const asking = setInterval(() => !isLive && onChange(), ASK_MS);
  if (typeof EventSource !== 'undefined') open();
  return () => {
    clearInterval(asking);
    clearTimeout(again);
    document.removeEventListener('visibilitychange', looked);
    source?.close();
  };
}
