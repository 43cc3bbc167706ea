import { largeGauge } from './drawing/large.js';
import type { GaugeNumbers, GaugeSize, GaugeWords } from './drawing/model.js';
import { phoneGauge } from './drawing/phone.js';
import { accessibleName, type Sayings } from './drawing/say.js';
import { written } from './drawing/scale.js';
import { monthGauge, rowGauge } from './drawing/small.js';
import { type Colour, colourFor, drawing } from './drawing/svg.js';

const LARGE_HEIGHT = 440;
const PRINT_HEIGHT = 356;
const PHONE = { usual: 358, least: 280, most: 480 };

export interface GaugeShape {
  readonly size: GaugeSize;
  /** Size `phone`: the room there is, from 280 to 480. */
  readonly width?: number;
  /** Colours of paper, whatever the size; `print` always has them. */
  readonly onPaper?: boolean;
}

/**
 * The month account as one drawing: numbers and words in, an SVG string out, and nothing else looked at.
 *
 * Every word is escaped; a missing volume has no mark and is named first with its reason; the order of the steps never follows value.
 */
export function drawGauge(numbers: GaugeNumbers, words: GaugeWords, { size, width = PHONE.usual, onPaper = false }: GaugeShape): string {
  const sayings: Sayings = { numbers, words, written: written(numbers) };
  const colour = colourFor(onPaper || size === 'print');
  const { body, ...extent } = drawn(sayings, colour, size, width);
  return drawing(size, extent, accessibleName(sayings, size), body);
}

function drawn(sayings: Sayings, colour: Colour, size: GaugeSize, width: number): { width: number; height: number; body: string } {
  switch (size) {
    case 'row':
      return rowGauge(sayings, colour);
    case 'month':
      return monthGauge(sayings, colour);
    case 'phone':
      return phoneGauge(sayings, colour, Math.min(PHONE.most, Math.max(PHONE.least, width)));
    case 'large':
      return largeGauge(sayings, colour, LARGE_HEIGHT);
    case 'print':
      return largeGauge(sayings, colour, PRINT_HEIGHT);
  }
}
