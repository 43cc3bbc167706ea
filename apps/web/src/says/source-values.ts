import type { Details } from './reason.js';
import { aboutVolume, type Saying, wordOf } from './saying.js';

/** Two sources that tell different volumes for the same days. */
export function sourceValues({ intl, formats }: Saying, details: Details): Record<string, string> {
  const source = (key: string): string => wordOf(intl, 'interval', details.text(key) ?? '');
  return {
    from: formats.day(details.text('from')),
    until: formats.day(details.text('until')),
    source: source('source'),
    volume: aboutVolume(formats, details.number('litres')),
    betterSource: source('betterSource'),
    betterVolume: aboutVolume(formats, details.number('betterLitres')),
  };
}
