import { GAPS, isKnown } from './model.js';
import { plain, type Sayings } from './say.js';
import { scaleTop } from './scale.js';
import { gapBox, markShape } from './shapes.js';
import { type Colour, path, polyline, rect, tenth, textLine } from './svg.js';
import { lineWidth } from './text.js';

const ROW = { width: 208, height: 32, end: 200, top: 11, bottom: 23 };

/** Steps that the small sizes draw: settings and unexplained, where they are more than can be measured. */
const shownGaps = ({ numbers }: Sayings) =>
  GAPS.slice(1).flatMap(({ kind, from, to }) => {
    const [low, high, gap] = [numbers.volumes[from].value, numbers.volumes[to].value, numbers.gaps[kind]];
    if (!isKnown(low) || !isKnown(high) || !isKnown(gap.value) || gap.within) return [];
    return [{ kind, low: Math.min(low, high), high: Math.max(low, high), below: gap.value < 0 }];
  });

/** Lying, without labels, for a list whose head carries the scale; what is past the scale is cut at its end. */
export function rowGauge(sayings: Sayings, colour: Colour): { width: number; height: number; body: string } {
  const top = scaleTop(sayings.numbers);
  const { allowed, needed, metered } = sayings.numbers.volumes;
  const at = (value: number): number => (Math.min(top, Math.max(0, value)) / top) * ROW.end;
  const upright = (x: number, y1: number, y2: number, name: 'ink' | 'water' | 'clay', width: number): string =>
    polyline(
      [
        [x, y1],
        [x, y2],
      ],
      { stroke: colour(name), 'stroke-width': width },
    );
  let body = ticks(colour);
  if (isKnown(metered.value))
    body += rect({ x: 0, y: ROW.top, width: at(metered.value), height: ROW.bottom - ROW.top }, { fill: colour('water-tint') });
  for (const { kind, low, high, below } of shownGaps(sayings)) {
    const box = { x: at(low), y: ROW.top, width: at(high) - at(low), height: ROW.bottom - ROW.top };
    if (box.width > 1.5) body += gapBox(kind, box, { below, within: false }, colour);
  }
  if (isKnown(allowed.value)) body += `<g data-mark="allowed">${upright(at(allowed.value), 0, ROW.height, 'ink', 1.5)}</g>`;
  if (isKnown(needed.value)) {
    const x = at(needed.value);
    body += upright(x, ROW.top - 3, ROW.bottom + 3, 'water', 2) + markShape('needed', x, ROW.top - 5, colour, 3.5);
  }
  if (isKnown(metered.value)) {
    const x = at(metered.value);
    body += upright(x, ROW.top - 2, ROW.bottom + 1, 'clay', 2) + markShape('metered', x, ROW.top - 5, colour, 4);
    if (metered.value > top) body += pastTheEnd(colour);
  } else
    body += polyline(
      [
        [0, 17],
        [ROW.end, 17],
      ],
      { stroke: colour('rule-2'), 'stroke-width': 1.5, 'stroke-dasharray': '2 5', 'data-missing': 'metered' },
    );
  return { width: ROW.width, height: ROW.height, body };
}

const ticks = (colour: Colour): string => {
  let d = '';
  for (let tick = 0; tick <= 20; tick += 1) d += `M${tenth((ROW.end * tick) / 20)} ${ROW.bottom + 4}v${tick % 5 === 0 ? 5 : 2}`;
  return path(d, { stroke: colour('rule-2'), 'stroke-width': 1 });
};

const pastTheEnd = (colour: Colour): string =>
  path(`M${ROW.end + 3} ${ROW.top + 2}l4 4l-4 4`, { stroke: colour('clay'), 'stroke-width': 1.5, 'data-cut': 'metered' });

const MONTH = { width: 80, height: 196, ground: 192, ceiling: 52, x: 26, board: 26, rainRoom: 42 };

/** Standing, one of twelve on one scale, with rain hanging from the top. */
export function monthGauge(sayings: Sayings, colour: Colour): { width: number; height: number; body: string } {
  const top = scaleTop(sayings.numbers);
  const { allowed, needed, metered } = sayings.numbers.volumes;
  const { x, board, ground } = MONTH;
  const at = (value: number): number => ground - (Math.min(top, Math.max(0, value)) / top) * (ground - MONTH.ceiling);
  const level = (value: number, from: number, to: number, name: 'ink' | 'water' | 'clay'): string =>
    polyline(
      [
        [from, at(value)],
        [to, at(value)],
      ],
      { stroke: colour(name), 'stroke-width': 2 },
    );
  let body = hangingRain(sayings, colour);
  if (isKnown(metered.value))
    body += rect({ x, y: at(metered.value), width: board, height: ground - at(metered.value) }, { fill: colour('water-tint') });
  else body += emptyMonth(sayings, colour);
  for (const { kind, low, high, below } of shownGaps(sayings)) {
    const box = { x, y: at(high), width: board, height: at(low) - at(high) };
    if (box.height > 1.5) body += gapBox(kind, box, { below, within: false }, colour);
  }
  body += polyline(
    [
      [8, ground],
      [MONTH.width - 8, ground],
    ],
    { stroke: colour('ink'), 'stroke-width': 1.5 },
  );
  if (isKnown(allowed.value)) body += `<g data-mark="allowed">${level(allowed.value, x - 12, x + board + 12, 'ink')}</g>`;
  if (isKnown(needed.value))
    body += level(needed.value, x - 6, x + board, 'water') + markShape('needed', x - 8, at(needed.value), colour, 3.5);
  if (isKnown(metered.value))
    body += level(metered.value, x, x + board, 'clay') + markShape('metered', x + board + 7, at(metered.value) - 1, colour, 4.5);
  return { width: MONTH.width, height: MONTH.height, body };
}

function hangingRain({ numbers }: Sayings, colour: Colour): string {
  if (!numbers.rain || !isKnown(numbers.rain.depth)) return '';
  const share = Math.min(1, Math.max(0, numbers.rain.depth / numbers.rain.full));
  const sky = polyline(
    [
      [8, 0.5],
      [MONTH.width - 8, 0.5],
    ],
    { stroke: colour('rule-2'), 'stroke-width': 1 },
  );
  return (
    sky +
    rect({ x: MONTH.x + 4, y: 0, width: MONTH.board - 8, height: share * MONTH.rainRoom }, { fill: colour('water'), 'data-rain': 'yes' })
  );
}

function emptyMonth({ words }: Sayings, colour: Colour): string {
  const box = { x: MONTH.x, y: MONTH.ceiling + 20, width: MONTH.board, height: MONTH.ground - MONTH.ceiling - 20 };
  const line = plain(words.missing, 12, true);
  const start = Math.max(0, MONTH.x + MONTH.board / 2 - lineWidth(line) / 2);
  const empty = rect(box, { fill: 'none', stroke: colour('rule-2'), 'stroke-dasharray': '2 4', 'data-missing': 'metered' });
  return empty + textLine(line, [start, MONTH.ceiling + 12], colour);
}
