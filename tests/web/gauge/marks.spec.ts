import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GAPS, type GaugeSize, MARKS } from '@rillbook/showing/gauge/drawing/model.js';
import { drawGauge } from '@rillbook/showing/gauge/draw-gauge.js';
import { anAccount, anyAccount, number, parsed, quailCommons, text, wordsIn } from './gauge-parts.js';

const english = wordsIn('en');
const sizes: readonly GaugeSize[] = ['row', 'month', 'phone', 'large', 'print'];
const draw = (account: Parameters<typeof drawGauge>[0], size: GaugeSize) => parsed(drawGauge(account, english, { size }));

describe('the four marks', () => {
  it.each(['phone', 'large', 'print'] as const)('keep their shapes at %s: a lid, a disc, a square, a triangle', (size) => {
    const svg = draw(quailCommons, size);
    const lid = svg.querySelector('rect[data-mark=allowed]');
    expect(lid && [number(lid, 'width'), number(lid, 'height')]).toEqual([10, 4]);
    expect(svg.querySelector('[data-mark=needed] circle')).not.toBeNull();
    const square = svg.querySelector('rect[data-mark=programmed]');
    expect(square && number(square, 'width')).toBe(square && number(square, 'height'));
    expect(square?.getAttribute('stroke')).toBeTruthy();
    // A point down: two corners above, one below.
    expect(svg.querySelector('path[data-mark=metered]')?.getAttribute('d')).toMatch(/h10l-5 8z$/);
  });

  it.each(['row', 'month'] as const)('keep theirs at %s, where programmed is the edge of its hatched step', (size) => {
    const svg = draw(quailCommons, size);
    expect(svg.querySelector('[data-mark=allowed] path')).not.toBeNull();
    expect(svg.querySelector('[data-mark=needed] circle')).not.toBeNull();
    expect(svg.querySelector('path[data-mark=metered]')).not.toBeNull();
    expect(svg.querySelectorAll('[data-gap]')).toHaveLength(2);
  });

  it('stand above their band of one standard uncertainty, both ways', () => {
    const svg = draw(anAccount({ allowed: { value: 200, sd: 20 } }, { scaleTop: 400 }), 'large');
    const band = svg.querySelector('[data-band=allowed]');
    const perUnit = (412 - 20) / 400;
    expect(band && number(band, 'height')).toBeCloseTo(40 * perUnit, 0);
  });

  it.each(sizes)('leave out a missing one at %s and say so, with its reason in the name', (size) => {
    for (const absent of MARKS) {
      const volumes = Object.fromEntries(
        MARKS.map((mark) => [mark, mark === absent ? { value: null, missing: 'no reading since 29 August' } : { value: 250_000 }]),
      );
      const svg = draw(anAccount(volumes), size);
      expect(svg.querySelector(`[data-mark=${absent}]`)).toBeNull();
      expect(svg.querySelector(`[data-level=${absent}]`)).toBeNull();
      expect(svg.getAttribute('aria-label')).toContain(`${absent}: missing, no reading since 29 August`);
      expect(svg.getAttribute('aria-label')).not.toMatch(new RegExp(`${absent} [\\d−]`));
    }
  });

  it('put a missing volume first and draw no step beside it', () => {
    const svg = draw(
      anAccount({ allowed: 250_000, needed: 240_000, metered: 390_000, programmed: { value: null, missing: 'settings not known' } }),
      'large',
    );
    const lines = [...svg.querySelectorAll('text')].map(text);
    const named = lines.filter((line) => /allowed|needed|programmed|metered/.test(line));
    expect(named[0]).toBe('programmed: missing');
    expect(lines).toContain('settings not known');
    expect([...svg.querySelectorAll('[data-gap]')].map((gap) => gap.getAttribute('data-gap'))).toEqual(['landscape']);
    expect(lines).toContain('settings gap: not known without programmed');
    expect(lines).toContain('unexplained gap: not known without programmed');
    expect(lines.join(' ')).not.toContain('above allowed:');
  });

  it('draw a negative metered volume at the ground and write it as it is', () => {
    const svg = draw(anAccount({ allowed: 1000, metered: -120 }), 'large');
    expect(svg.textContent).toContain('metered −120 gal');
    expect(svg.querySelector('[data-level=metered]')?.getAttribute('d')).toMatch(/ 412L/);
  });
});

describe('the steps', () => {
  it('keep their order whatever their values', () => {
    fc.assert(
      fc.property(anyAccount, (account) => {
        const drawn = [...draw(account, 'large').querySelectorAll('[data-gap]')];
        const order = drawn.map((gap) => GAPS.findIndex(({ kind }) => kind === gap.getAttribute('data-gap')));
        expect(order).toEqual([...order].sort((one, other) => one - other));
        const lefts = drawn.map((gap) => number(gap.querySelector('rect') as Element, 'x'));
        expect(lefts).toEqual([...lefts].sort((one, other) => one - other));
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('are hatched above, open below, open and dashed within what can be measured, by the account’s own judgement', () => {
    const gap = (value: number, within: boolean) => {
      const account = anAccount({ needed: 300_000, programmed: { value: 300_000 + value, sd: 1 } });
      return draw({ ...account, gaps: { ...account.gaps, settings: { value, sd: 99_000, within } } }, 'large').querySelector(
        '[data-gap=settings]',
      );
    };
    expect(gap(50_000, false)?.querySelectorAll('path')).toHaveLength(1);
    expect(gap(-50_000, false)?.querySelectorAll('path')).toHaveLength(0);
    expect(gap(50_000, true)?.querySelectorAll('path')).toHaveLength(0);
    expect(gap(50_000, true)?.querySelector('[stroke-dasharray]')).not.toBeNull();
    // A gap's uncertainty alone decides nothing: no variance is added or compared in the drawing.
    expect(gap(50_000, false)?.querySelector('[stroke-dasharray]')).toBeNull();
  });

  it('name their gallons and money, and say what is within what can be measured', () => {
    const account = {
      ...quailCommons,
      gaps: {
        landscape: { value: -13_600, sd: 5200, within: true, money: -76.84 },
        settings: { value: 92_700, sd: 20_000, money: 523.755 },
        unexplained: { value: 58_400, sd: 17_000, money: 329.96 },
      },
    };
    for (const size of ['large', 'phone'] as const) {
      const words = draw(account, size).textContent ?? '';
      expect(words).toContain('programmed above need');
      expect(words).toContain('92,700 gal, about $524');
      expect(words).toMatch(/within what can be ?measured \(±\u00a05,200\)/);
    }
  });

  it('are left out of a row and a month within what can be measured', () => {
    const account = { ...quailCommons, gaps: { ...quailCommons.gaps, settings: { value: 92_700, within: true } } };
    for (const size of ['row', 'month'] as const)
      expect([...draw(account, size).querySelectorAll('[data-gap]')].map((gap) => gap.getAttribute('data-gap'))).toEqual(['unexplained']);
  });
});

describe('what is written', () => {
  it('adds up: the gaps are the differences of the volumes beside them', () => {
    const svg = draw(anAccount({ allowed: 252_149, needed: 238_451, programmed: 331_251, metered: 389_649 }), 'large');
    // 331,300 − 238,500 and 389,600 − 331,300: each gap rounded alone would have been 92,800 and 58,400.
    for (const words of [
      'allowed 252,100 gal',
      'needed 238,500 gal',
      'programmed 331,300 gal',
      'metered 389,600 gal',
      '92,800 gal',
      '58,300 gal',
      '13,600 gal',
      '137,500 gal',
    ])
      expect(svg.textContent).toContain(words);
  });

  it('keeps a gap that was counted otherwise than as a difference', () => {
    const account = anAccount({ needed: 200_000, programmed: 300_000 });
    expect(draw({ ...account, gaps: { ...account.gaps, settings: { value: 55_000 } } }, 'large').textContent).toContain('55,000 gal');
  });
});

describe('a row', () => {
  it('is cut at its end, marks included, and shows that it goes on', () => {
    const row = draw(anAccount({ allowed: 100, needed: 90, programmed: 150, metered: 900 }, { scaleTop: 200 }), 'row');
    const rights = [...row.querySelectorAll('rect')].map((box) => number(box, 'x') + number(box, 'width'));
    expect(Math.max(...rights)).toBeLessThanOrEqual(200);
    expect(row.querySelector('[data-cut=metered]')).not.toBeNull();
    expect(row.querySelector('[data-mark=metered]')?.getAttribute('d')).toMatch(/^M196 /);
    expect(draw(anAccount({ allowed: 100, metered: 190 }, { scaleTop: 200 }), 'row').querySelector('[data-cut]')).toBeNull();
  });

  it('has allowed on one line down the list when the scale is twice the allowed', () => {
    for (const allowed of [29_900, 252_100, 418_000]) {
      const row = draw(anAccount({ allowed }, { scaleTop: 2 * allowed }), 'row');
      expect(row.querySelector('[data-mark=allowed] path')?.getAttribute('d')).toMatch(/^M100 /);
    }
  });

  it('carries no words', () => {
    expect(draw(quailCommons, 'row').querySelectorAll('text')).toHaveLength(0);
  });
});

describe('a month', () => {
  it('hangs rain from the top, up to what fills the room', () => {
    const rain = (depth: number): number =>
      number(draw({ ...quailCommons, rain: { depth, full: 100 } }, 'month').querySelector('[data-rain]') as Element, 'height');
    expect(rain(50)).toBe(21);
    expect(rain(400)).toBe(42);
    expect(draw(quailCommons, 'month').querySelector('[data-rain]')).toBeNull();
  });
});
