import fc from 'fast-check';
import { createIntl } from 'react-intl';
import { catalogue } from '../support/catalogues.js';
import { formatsFor } from '../../../apps/web/src/i18n/formats.js';
import { localeOf, type Language } from '../../../apps/web/src/i18n/numbers.js';
import { textWidth } from '@rillbook/showing/gauge/drawing/glyph-widths.js';
import type { GaugeNumbers, GaugeVolume, GaugeWords, Mark } from '@rillbook/showing/gauge/drawing/model.js';
import { gaugeWords } from '../../../apps/web/src/ui/gauge/use-gauge-words.js';

/** The gauge's words from the message catalogue, in gallons and dollars. */
export function wordsIn(language: Language): GaugeWords {
  const intl = createIntl({ locale: localeOf(language), messages: catalogue(language) });
  const formats = formatsFor({ language, units: 'us', currency: 'USD', timeZone: 'America/Denver' });
  return gaugeWords(intl, formats, formats.volumeColumn(1_000_000));
}

type Volumes = Partial<Record<Mark, GaugeVolume | number | null>>;

/** An account whose gaps are the differences of its volumes; their uncertainty is given, never added from the volumes'. */
export function anAccount(given: Volumes, more: Partial<GaugeNumbers> = {}): GaugeNumbers {
  const volume = (mark: Mark): GaugeVolume => {
    const it = given[mark];
    return typeof it === 'object' && it !== null ? it : { value: it ?? null };
  };
  const volumes = { allowed: volume('allowed'), needed: volume('needed'), programmed: volume('programmed'), metered: volume('metered') };
  const between = (from: Mark, to: Mark): { value: number | null } => {
    const [low, high] = [volumes[from].value, volumes[to].value];
    return { value: low === null || high === null ? null : high - low };
  };
  return {
    volumes,
    gaps: {
      landscape: between('allowed', 'needed'),
      settings: between('needed', 'programmed'),
      unexplained: between('programmed', 'metered'),
    },
    aboveAllowed: between('allowed', 'metered'),
    ...more,
  };
}

/** September to the 24th on the mock's invented property. */
export const quailCommons = anAccount({
  allowed: { value: 252_100, sd: 2500 },
  needed: { value: 238_500, sd: 16_700 },
  programmed: { value: 331_200, sd: 16_600 },
  metered: { value: 389_600, sd: 3900 },
});

export const parsed = (svg: string): SVGSVGElement => {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.nodeName !== 'svg') throw new Error(`not an SVG: ${root.textContent?.slice(0, 200)}`);
  return root as unknown as SVGSVGElement;
};

export const text = (element: Element): string => element.textContent ?? '';
export const number = (element: Element, name: string): number => Number(element.getAttribute(name));

export interface Box {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The boxes of all words in a drawing, from their glyphs' widths. */
export function wordBoxes(svg: string): Box[] {
  return [...parsed(svg).querySelectorAll('text')].map((element) => {
    const size = number(element, 'font-size');
    const spans = [...element.querySelectorAll('tspan')];
    const width = spans.reduce(
      (sum, span) =>
        sum + textWidth(text(span), Number(span.getAttribute('font-size') ?? size), span.getAttribute('font-weight') === '700'),
      0,
    );
    const [x, y] = [number(element, 'x'), number(element, 'y')];
    const left = element.getAttribute('text-anchor') === 'end' ? x - width : x;
    // Public Sans: capitals and accents reach 0.8 of the size above the baseline, descenders 0.2 below.
    return { words: text(element), left, right: left + width, top: y - size * 0.8, bottom: y + size * 0.2 };
  });
}

export const overlapping = (boxes: readonly Box[]): string[] =>
  boxes.flatMap((one, place) =>
    boxes
      .slice(place + 1)
      .filter(
        (other) =>
          one.left < other.right - 0.1 && other.left < one.right - 0.1 && one.top < other.bottom - 0.1 && other.top < one.bottom - 0.1,
      )
      .map((other) => `"${one.words}" over "${other.words}"`),
  );

const reasons = [
  'no meter reading since 29 August',
  'settings not known: read the controller',
  'faltan ajustes del controlador desde el 3 de septiembre y nadie ha ido a leerlos',
  'the meter was changed on the fourth and its last register was not written down by anybody who was there, nor photographed, nor billed',
  'Superlangeswortohnejedentrennstrichdasnirgendshineinpasstundtrotzdemstehensoll',
];

const volume = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      value: fc.oneof(fc.integer({ min: 0, max: 2_000_000 }), fc.constantFrom(0, 250_000, 250_001, 0.4, -1200)),
      sd: fc.option(fc.integer({ min: 0, max: 300_000 })),
      estimated: fc.boolean(),
    }),
  },
  { weight: 1, arbitrary: fc.record({ value: fc.constant(null), missing: fc.constantFrom(...reasons) }) },
);

/** Any account: ties, zeros, missing volumes, wide uncertainties, long reasons. */
export const anyAccount: fc.Arbitrary<GaugeNumbers> = fc
  .record({
    allowed: volume,
    needed: volume,
    programmed: volume,
    metered: volume,
    within: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
    money: fc.boolean(),
  })
  .map(({ within, money, ...volumes }) => {
    const account = anAccount(volumes as Volumes);
    const dressed = (gap: { value: number | null }, isWithin: boolean) => ({
      ...gap,
      sd: 16_900,
      within: isWithin,
      money: money && gap.value !== null ? gap.value * 0.00565 : null,
    });
    const { landscape, settings, unexplained } = account.gaps;
    const gaps = {
      landscape: dressed(landscape, within[0]),
      settings: dressed(settings, within[1]),
      unexplained: dressed(unexplained, within[2]),
    };
    return { ...account, gaps, aboveAllowed: dressed(account.aboveAllowed, false) };
  });
