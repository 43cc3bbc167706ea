import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GaugeSize } from '@rillbook/showing/gauge/drawing/model.js';
import { placed } from '@rillbook/showing/gauge/drawing/place.js';
import { drawGauge } from '@rillbook/showing/gauge/draw-gauge.js';
import { anAccount, anyAccount, number, overlapping, parsed, quailCommons, wordBoxes, wordsIn } from './gauge-parts.js';

const shapes: readonly { size: GaugeSize; width?: number }[] = [
  { size: 'large' },
  { size: 'print' },
  { size: 'phone' },
  { size: 'phone', width: 288 },
  { size: 'phone', width: 430 },
];

describe('the labels of the staff gauge', () => {
  for (const language of ['en', 'es'] as const) {
    const words = wordsIn(language);
    for (const shape of shapes) {
      it(`never overlap nor leave the drawing: ${shape.size} ${shape.width ?? ''} in ${language}`, () => {
        fc.assert(
          fc.property(anyAccount, (account) => {
            const svg = drawGauge(account, words, shape);
            const boxes = wordBoxes(svg);
            expect(overlapping(boxes)).toEqual([]);
            const [width, height] = [number(parsed(svg), 'width'), number(parsed(svg), 'height')];
            for (const box of boxes) {
              expect(box.left, box.words).toBeGreaterThanOrEqual(-0.5);
              expect(box.right, box.words).toBeLessThanOrEqual(width + 0.5);
              expect(box.top, box.words).toBeGreaterThanOrEqual(-0.5);
              expect(box.bottom, box.words).toBeLessThanOrEqual(height + 0.5);
            }
          }),
          { numRuns: 60, seed: 20260924 },
        );
      });
    }
  }

  it('stand at their marks where there is room, and give way where there is none', () => {
    const apart = drawGauge(anAccount({ allowed: 100, needed: 200, programmed: 300, metered: 400 }), wordsIn('en'), { size: 'large' });
    const levels = [...parsed(apart).querySelectorAll('[data-level]')].map((line) =>
      Number(/M[\d.]+ ([\d.]+)/.exec(line.getAttribute('d') ?? '')?.[1]),
    );
    const names = wordBoxes(apart).filter(({ words }) => /^(allowed|needed|programmed|metered) \d/.test(words));
    const middles = names.map(({ top, bottom }) => (top + bottom) / 2).sort((one, other) => one - other);
    expect(names).toHaveLength(4);
    levels.sort((one, other) => one - other).forEach((level, place) => expect(Math.abs((middles[place] ?? 0) - level)).toBeLessThan(4));
    const tied = wordBoxes(
      drawGauge(anAccount({ allowed: 100, needed: 100, programmed: 100, metered: 100 }), wordsIn('en'), { size: 'large' }),
    );
    const tops = tied.filter(({ words }) => /^(allowed|needed|programmed|metered) \d/.test(words)).map(({ top }) => top);
    expect(new Set(tops).size).toBe(4);
  });

  it('leave off a numeral that a mark would strike out', () => {
    const numerals = (top: number): string[] =>
      wordBoxes(drawGauge(anAccount({ allowed: top }, { scaleTop: 400_000 }), wordsIn('en'), { size: 'large' })).map(({ words }) => words);
    expect(numerals(300_000)).not.toContain('300');
    expect(numerals(275_000)).toContain('300');
  });

  it('say kgal nowhere and thousands in words', () => {
    const svg = drawGauge(quailCommons, wordsIn('en'), { size: 'large' });
    expect(svg).toContain('0 · thousand gal');
    expect(svg).not.toContain('kgal');
  });
});

describe('placing labels', () => {
  it('keeps order and distance, and moves as little as a search over all shifts can find', () => {
    const column = fc.array(fc.record({ top: fc.integer({ min: 0, max: 300 }), height: fc.integer({ min: 10, max: 40 }) }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(column, (labels) => {
        const tops = placed(labels, 8, 0, 600);
        labels
          .slice(1)
          .forEach((_, place) =>
            expect((tops[place + 1] ?? 0) - (tops[place] ?? 0)).toBeGreaterThanOrEqual((labels[place]?.height ?? 0) + 8 - 1e-9),
          );
        const cost = (at: readonly number[]): number => at.reduce((sum, top, place) => sum + (top - (labels[place]?.top ?? 0)) ** 2, 0);
        const fits = (at: readonly number[]): boolean =>
          at.every((top, place) => top >= 0 && (place === 0 || top - (at[place - 1] ?? 0) >= (labels[place - 1]?.height ?? 0) + 8 - 1e-9));
        const runs = labels.flatMap((_, from) => labels.slice(from).map((__, length) => ({ from, to: from + length })));
        const moved = runs.flatMap(({ from, to }) =>
          [-0.01, 0.01].map((shift) => tops.map((top, place) => (place >= from && place <= to ? top + shift : top))),
        );
        for (const at of moved.filter(fits)) expect(cost(at)).toBeGreaterThanOrEqual(cost(tops) - 1e-6);
      }),
    );
  });
});
