/** How a person wants pages to look; kept on the device, for it depends on the screen and the light. */
export interface Display {
  readonly theme: 'device' | 'light' | 'dark';
  readonly contrast: 'usual' | 'high';
  readonly text: 'usual' | 'large';
}

const KEY = 'rillbook.display.1';
export const usualDisplay: Display = { theme: 'device', contrast: 'usual', text: 'usual' };

const oneOf = <Word extends string>(words: readonly Word[], value: unknown, otherwise: Word): Word =>
  words.find((word) => word === value) ?? otherwise;

/** What was kept, with anything unknown taken for usual. */
export function restoredDisplay(kept: string | null): Display {
  let found: Record<string, unknown> = {};
  try {
    const read: unknown = JSON.parse(kept ?? '{}');
    if (typeof read === 'object' && read !== null) found = read as Record<string, unknown>;
  } catch {
    // Not ours or cut short: the usual look is a good answer, and the next choice overwrites it.
  }
  return {
    theme: oneOf(['device', 'light', 'dark'], found['theme'], 'device'),
    contrast: oneOf(['usual', 'high'], found['contrast'], 'usual'),
    text: oneOf(['usual', 'large'], found['text'], 'usual'),
  };
}

/** Storage may be closed to us (private windows, full disks): the page still works and forgets. */
const storage = (): Storage | null => {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
};

export const keptDisplay = (): Display => restoredDisplay(storage()?.getItem(KEY) ?? null);

export function keepDisplay(display: Display): void {
  try {
    storage()?.setItem(KEY, JSON.stringify(display));
  } catch {
    // A full disk loses the choice of look, nothing else.
  }
}

const isDarkOutside = (): boolean => typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
const wantsContrast = (): boolean => typeof matchMedia === 'function' && matchMedia('(prefers-contrast: more)').matches;

/**
 * Puts a look on the page. A crew's page opens light whatever the device says, for the sun decides; dark is a choice there.
 */
export function showDisplay(display: Display, isField: boolean): 'light' | 'dark' {
  const root = document.documentElement;
  const byDevice = !isField && isDarkOutside() ? 'dark' : 'light';
  const theme = display.theme === 'device' ? byDevice : display.theme;
  root.dataset['theme'] = theme;
  root.dataset['contrast'] = display.contrast === 'high' || wantsContrast() ? 'high' : 'usual';
  root.dataset['text'] = display.text;
  return theme;
}

/** Calls back when the device's own look changes; returns how to stop. */
export function onDeviceLook(changed: () => void): () => void {
  if (typeof matchMedia !== 'function') return () => {};
  const looks = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'].map((query) => matchMedia(query));
  for (const look of looks) look.addEventListener('change', changed);
  return () => {
    for (const look of looks) look.removeEventListener('change', changed);
  };
}
