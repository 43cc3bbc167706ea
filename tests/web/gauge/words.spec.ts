import { describe, expect, it } from 'vitest';
import type { GaugeSize } from '@rillbook/showing/gauge/drawing/model.js';
import { drawGauge } from '@rillbook/showing/gauge/draw-gauge.js';
import { anAccount, parsed, quailCommons, wordsIn } from './gauge-parts.js';

const sizes: readonly GaugeSize[] = ['row', 'month', 'phone', 'large', 'print'];
const hostile = '"><script>alert(1)</script><img src=x onerror=alert(1)>\u0000\u0008 & \'</svg>';

describe('words in the drawing', () => {
  it.each(sizes)('stay words at %s, however hostile', (size) => {
    const words = wordsIn('en');
    const account = anAccount({ allowed: 100, needed: { value: null, missing: hostile }, programmed: 120, metered: 140 });
    const dressed = { ...account, gaps: { ...account.gaps, landscape: { value: null, missing: hostile } } };
    const svg = drawGauge(
      dressed,
      { ...words, unit: hostile, missing: hostile, marks: { ...words.marks, allowed: hostile }, about: () => hostile },
      { size },
    );
    const names = [...parsed(svg).querySelectorAll('*')].map(({ nodeName }) => nodeName);
    expect(names.filter((name) => !['g', 'rect', 'path', 'circle', 'text', 'tspan'].includes(name))).toEqual([]);
    const attributes = [...parsed(svg).querySelectorAll('*')].flatMap((element) => element.getAttributeNames());
    expect(attributes.filter((name) => /^on|href|style/.test(name))).toEqual([]);
    const host = document.createElement('div');
    host.innerHTML = svg;
    expect(host.querySelector('script, img')).toBeNull();
    expect(host.children).toHaveLength(1);
    expect(host.querySelector('svg')?.getAttribute('aria-label')).toContain('<script>alert(1)</script>');
  });

  it.each(sizes)('name all four volumes to those who cannot see %s', (size) => {
    const name = parsed(drawGauge(quailCommons, wordsIn('en'), { size })).getAttribute('aria-label');
    for (const volume of ['allowed 252,100 gal', 'needed 238,500 gal', 'programmed 331,200 gal', 'metered 389,600 gal'])
      expect(name).toContain(volume);
  });

  it('are Spanish for a Spanish reader', () => {
    const svg = parsed(drawGauge(quailCommons, wordsIn('es'), { size: 'large' }));
    for (const words of [
      'permitido 252,100 gal',
      'necesario',
      'programado sobre lo necesario',
      'medido sobre lo permitido',
      'buscar fugas',
    ])
      expect(svg.textContent).toContain(words);
  });

  it('are printed in fixed colours and shown in the person’s theme', () => {
    expect(drawGauge(quailCommons, wordsIn('en'), { size: 'print' })).not.toContain('var(');
    expect(drawGauge(quailCommons, wordsIn('en'), { size: 'large' })).toContain('var(--clay)');
  });
});
