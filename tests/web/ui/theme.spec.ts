import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { restoredDisplay, usualDisplay } from '../../../apps/web/src/ui/theme/display.js';
import { paperColours } from '@rillbook/showing/colours/paper-colours.js';

const css = readFileSync(path.resolve(process.cwd(), 'apps/web/src/ui/theme/tokens.css'), 'utf8');

const block = (selector: string): Record<string, string> => {
  const body = css.split(`${selector} {`)[1]?.split('}')[0] ?? '';
  return Object.fromEntries([...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, value]) => [name ?? '', value ?? '']));
};

const light = block(':root');
const dark = { ...light, ...block(':root[data-theme="dark"]') };
const themes: Readonly<Record<string, Record<string, string>>> = {
  light,
  dark,
  'light, high contrast': { ...light, ...block(':root[data-contrast="high"]') },
  'dark, high contrast': { ...dark, ...block(':root[data-theme="dark"][data-contrast="high"]') },
};

/** Relative luminance and contrast ratio (WCAG 2.2, definitions of both). */
const luminance = (colour: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (one: string, other: string): number => {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

describe('the colours', () => {
  it('measure contrast as WCAG 2.2 defines it: black on white is 21', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  });

  it('are dark on screens alone: paper is white, and light text on it cannot be read', () => {
    const onScreens = [...css.matchAll(/@media screen \{([\s\S]*?)\n\}/g)].map(([, body]) => body ?? '').join('');
    const darkBlocks = (text: string) => text.split('[data-theme="dark"]').length - 1;
    expect(darkBlocks(css)).toBe(2);
    expect(darkBlocks(onScreens)).toBe(darkBlocks(css));
  });

  it.each(Object.keys(themes))('can be read in %s', (name) => {
    const theme = themes[name] ?? {};
    const ratio = (text: string, ground: string): number => contrast(theme[text] ?? '', theme[ground] ?? '');
    // WCAG 2.2: 1.4.6 for field text (7:1), 1.4.3 for the rest (4.5:1), 1.4.11 for edges and marks (3:1).
    for (const text of ['ink', 'ink-2', 'clay-ink', 'amber-ink']) expect(ratio(text, 'paper'), text).toBeGreaterThanOrEqual(7);
    for (const text of ['ink', 'ink-2', 'clay-ink', 'amber-ink', 'water']) expect(ratio(text, 'paper-2'), text).toBeGreaterThanOrEqual(4.5);
    for (const text of ['water', 'slate']) expect(ratio(text, 'paper'), text).toBeGreaterThanOrEqual(4.5);
    expect(ratio('on-water', 'water')).toBeGreaterThanOrEqual(7);
    for (const mark of ['clay', 'amber', 'water', 'slate', 'rule-2'])
      for (const ground of ['paper', 'paper-2']) expect(ratio(mark, ground), `${mark} on ${ground}`).toBeGreaterThanOrEqual(3);
    for (const mark of ['clay', 'amber', 'water', 'ink']) expect(ratio(mark, 'water-tint'), `${mark} on water`).toBeGreaterThanOrEqual(3);
  });

  it('are printed as they are shown by day', () => {
    for (const [name, value] of Object.entries(paperColours)) if (name !== 'paper') expect(value, name).toBe(light[name]);
  });
});

describe('the kept look', () => {
  it('is restored, and anything unknown is the usual', () => {
    expect(restoredDisplay('{"theme":"dark","contrast":"high","text":"large"}')).toEqual({
      theme: 'dark',
      contrast: 'high',
      text: 'large',
    });
    for (const kept of [null, '', '{', '[]', 'null', '{"theme":"neon","contrast":7}']) expect(restoredDisplay(kept)).toEqual(usualDisplay);
  });
});
