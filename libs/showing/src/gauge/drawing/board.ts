import { GAPS, isKnown, MARKS, type Mark } from './model.js';
import type { Sayings } from './say.js';
import { numeral, numeralStep, scaleTop } from './scale.js';
import { textWidth } from './glyph-widths.js';
import { gapBox } from './shapes.js';
import { type Colour, markColour, polyline, rect, textLine } from './svg.js';

/** Where the standing board is, and how high the scale reaches. */
export interface Board {
  readonly x: number;
  readonly width: number;
  readonly ceiling: number;
  readonly ground: number;
  readonly top: number;
  readonly laneWidth: number;
  readonly laneGap: number;
  /** How far the marks' lines reach left of the board. */
  readonly reach: number;
  readonly small: number;
}

/** The drawing's tools: what is said, where the board is, and which colours. */
export interface Pen {
  readonly sayings: Sayings;
  readonly board: Board;
  readonly colour: Colour;
}

/** The height of a volume; below zero and above the scale it stays at the end. */
export const heightOf = (board: Board, value: number): number =>
  board.ground - (Math.min(board.top, Math.max(0, value)) / board.top) * (board.ground - board.ceiling);

export const laneStart = (board: Board, lane: number): number => board.x + board.width + 18 + lane * (board.laneWidth + board.laneGap);
export const lanesEnd = (board: Board): number => laneStart(board, 2) + board.laneWidth;

const NARROWEST = 52;
const NUMERAL_SIZE = 14;

/** The board is as wide as its longest numeral asks, so that none touches the blocks. */
export function boardWidth({ numbers, words }: Sayings): number {
  const top = scaleTop(numbers);
  const step = numeralStep(top);
  const longest = numeral(Math.floor(top / step) * step, step, words.number);
  return Math.max(NARROWEST, Math.ceil(24 + textWidth(longest, NUMERAL_SIZE, true)));
}

/** The lane at whose far edge a mark's line ends. */
const LAST_LANE: Readonly<Record<Mark, number>> = { allowed: 0, needed: 1, programmed: 2, metered: 2 };
export const markEnd = (board: Board, mark: Mark): number => laneStart(board, LAST_LANE[mark]) + board.laneWidth;

export const knownMarks = (sayings: Sayings): { mark: Mark; value: number }[] =>
  MARKS.flatMap((mark) => {
    const { value } = sayings.numbers.volumes[mark];
    return isKnown(value) ? [{ mark, value }] : [];
  });

function water({ sayings, board, colour }: Pen): string {
  const { value } = sayings.numbers.volumes.metered;
  if (!isKnown(value)) return '';
  const y = heightOf(board, value);
  return rect({ x: board.x - 14, y, width: lanesEnd(board) - board.x + 28, height: board.ground - y }, { fill: colour('water-tint') });
}

/** Alternating blocks; a numeral that a mark would strike out is left off. */
function scale({ sayings, board, colour }: Pen): string {
  const { x, width, top } = board;
  const step = numeralStep(top);
  const minor = step / 5;
  const inThousands = step >= 1000;
  const marks = knownMarks(sayings).map(({ value }) => heightOf(board, value));
  let drawn = '';
  for (let block = 0; (block + 1) * minor <= top * 1.0001; block += 2) {
    const y = heightOf(board, (block + 1) * minor);
    drawn += rect({ x, y, width: 12, height: heightOf(board, block * minor) - y }, { fill: colour('ink') });
  }
  for (let place = 1; place * step <= top; place += 1) {
    const y = heightOf(board, place * step);
    drawn += polyline(
      [
        [x, y],
        [x + 18, y],
      ],
      { stroke: colour('ink'), 'stroke-width': 1.5 },
    );
    const figure = numeral(place * step, step, sayings.words.number);
    const isStruck = marks.some((mark) => Math.abs(mark - y) < 9);
    if (!isStruck) drawn += textLine({ size: NUMERAL_SIZE, spans: [{ text: figure, bold: true }] }, [x + width - 5, y + 5], colour, true);
  }
  const unit = inThousands ? sayings.words.thousandUnit : sayings.words.unit;
  return (
    drawn + textLine({ size: board.small, spans: [{ text: `0 · ${unit}`, soft: true }] }, [x - board.reach - 4, board.ground + 18], colour)
  );
}

/** One standard uncertainty, both ways, as a tint across the board. */
function band({ sayings, board, colour }: Pen, mark: Mark, value: number): string {
  const { sd } = sayings.numbers.volumes[mark];
  if (!isKnown(sd) || sd <= 0) return '';
  const y = heightOf(board, value + sd);
  const box = { x: board.x + 13, y, width: board.width - 14, height: heightOf(board, value - sd) - y };
  return rect(box, { fill: colour(markColour[mark]), 'fill-opacity': '.2', 'data-band': mark });
}

/** Water as high as the meter says, the board with its numerals, and the bands of uncertainty. */
export function boardBack(pen: Pen): string {
  const { board, colour, sayings } = pen;
  const face = { x: board.x, y: board.ceiling - 12, width: board.width, height: board.ground - board.ceiling + 12 };
  const bands = knownMarks(sayings).map(({ mark, value }) => band(pen, mark, value));
  const ground = polyline(
    [
      [board.x - 14, board.ground],
      [lanesEnd(board) + 14, board.ground],
    ],
    { stroke: colour('ink'), 'stroke-width': 2 },
  );
  const edge = rect(face, { fill: 'none', stroke: colour('ink'), 'stroke-width': 1.5 });
  return water(pen) + rect(face, { fill: colour('paper') }) + scale(pen) + edge + ground + bands.join('');
}

/** The stair from allowed to metered, one lane for each gap, and the four marks' lines over it. */
export function boardFront({ sayings, board, colour }: Pen): string {
  const { numbers } = sayings;
  const lanes = GAPS.map(({ kind, from, to }, lane) => {
    const [low, high, gap] = [numbers.volumes[from].value, numbers.volumes[to].value, numbers.gaps[kind]];
    if (!isKnown(low) || !isKnown(high) || !isKnown(gap.value)) return '';
    const y = heightOf(board, Math.max(low, high));
    const box = { x: laneStart(board, lane), y, width: board.laneWidth, height: Math.max(2, heightOf(board, Math.min(low, high)) - y) };
    return gapBox(kind, box, { below: gap.value < 0, within: gap.within ?? false }, colour);
  });
  const lines = knownMarks(sayings).map(({ mark, value }) => {
    const y = heightOf(board, value);
    const dashes = numbers.volumes[mark].estimated ? { 'stroke-dasharray': '6 3' } : {};
    return polyline(
      [
        [board.x - board.reach, y],
        [markEnd(board, mark), y],
      ],
      { stroke: colour(markColour[mark]), 'stroke-width': 2, 'data-level': mark, ...dashes },
    );
  });
  return lanes.join('') + lines.join('');
}

/** The middle of a gap's step, where its leader begins; null where the step is not drawn. */
export function gapMiddle({ sayings, board }: Pen, lane: number): number | null {
  const step = GAPS[lane];
  if (!step || !isKnown(sayings.numbers.gaps[step.kind].value)) return null;
  const [low, high] = [sayings.numbers.volumes[step.from].value, sayings.numbers.volumes[step.to].value];
  return isKnown(low) && isKnown(high) ? (heightOf(board, low) + heightOf(board, high)) / 2 : null;
}
