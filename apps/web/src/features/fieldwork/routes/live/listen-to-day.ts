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
    source.onerror = () => {
      told(false);
      // What broke the browser mends by itself; what was refused or not understood it leaves closed.
      if (source?.readyState === EventSource.CLOSED) again = setTimeout(open, AGAIN_MS);
    };
  };
  const asking = setInterval(() => !isLive && onChange(), ASK_MS);
  if (typeof EventSource !== 'undefined') open();
  return () => {
    clearInterval(asking);
    clearTimeout(again);
    source?.close();
  };
}
