import { type Board, boardBack, boardFront, boardWidth, gapMiddle, heightOf, knownMarks, lanesEnd, laneStart, type Pen } from './board.js';
import { GAPS, isKnown, MARKS } from './model.js';
import { columnHeight, placed } from './place.js';
import { gapSaying, plain, type Sayings, totalSpans, volumeParts } from './say.js';
import { scaleTop } from './scale.js';
import { markShape } from './shapes.js';
import { type Colour, gapColour, markColour, type Point, polyline, textLine } from './svg.js';
import { ascent, type Line, lineHeight, lineWidth, wrapped } from './text.js';

const TYPE = 15;
const SMALL = 14;
const CEILING = 20;
/** Room for the names on the left, and for the gaps on the right, unless the words need more. */
const NAMES = 258;
const SAYINGS = 386;
const NAME_GAP = 9;
const SAYING_GAP = 17;

interface Label {
  readonly lines: readonly Line[];
  readonly height: number;
  /** The level it speaks of; null for one that speaks of nothing drawn, which stays at the top. */
  readonly level: (board: Board) => number | null;
  readonly lead: (pen: Pen, level: number, middle: number) => string;
  readonly weight?: number;
}

const heightOfLines = (lines: readonly Line[]): number => lines.reduce((sum, line) => sum + lineHeight(line), 0);
const widest = (labels: readonly Label[]): number => Math.max(0, ...labels.flatMap(({ lines }) => lines.map(lineWidth)));

function nameLabels(sayings: Sayings): Label[] {
  const { volumes } = sayings.numbers;
  const absent = MARKS.filter((mark) => !isKnown(volumes[mark].value)).map((mark): Label => {
    const reason = volumes[mark].missing;
    const head = plain(`${sayings.words.marks[mark]}: ${sayings.words.missing}`, TYPE);
    const lines = [head, ...(reason ? wrapped(plain(reason, SMALL, true), NAMES, 5) : [])];
    return { lines, height: heightOfLines(lines), level: () => null, lead: () => '' };
  });
  const known = knownMarks(sayings).map(({ mark, value }): Label => {
    const { name, volume, spread } = volumeParts(sayings, mark);
    const line: Line = {
      size: TYPE,
      spans: [{ text: `${name} ` }, ...volume, ...(spread ? [{ text: ` ${spread}`, soft: true, size: SMALL }] : [])],
    };
    const lead = ({ board, colour }: Pen, level: number, middle: number): string => {
      const elbow: Point[] = [
        [board.x - 6, level],
        [board.x - 14, level],
        [board.x - 24, middle],
      ];
      return polyline(elbow, { stroke: colour(markColour[mark]), 'stroke-width': 1.5 }) + markShape(mark, board.x - 30, middle, colour);
    };
    return { lines: [line], height: lineHeight(line), level: (board) => heightOf(board, value), lead };
  });
  const highestFirst = knownMarks(sayings).map(({ value }, place) => ({ value, label: known[place] }));
  highestFirst.sort((one, other) => other.value - one.value);
  return [...absent, ...highestFirst.flatMap(({ label }) => (label ? [label] : []))];
}

function gapLabels(sayings: Sayings): Label[] {
  const { volumes } = sayings.numbers;
  const labels = GAPS.map(({ kind, from, to }, lane) => {
    const saying = gapSaying(sayings, kind);
    const head: Line = {
      size: TYPE,
      spans: saying.known ? [{ text: `${saying.comparison}: ` }, ...saying.amount] : [{ text: saying.comparison }],
    };
    const lines = [...wrapped(head, SAYINGS, 3), ...(saying.note ? wrapped(plain(saying.note, SMALL, true), SAYINGS, 2) : [])];
    const lead = ({ board, colour }: Pen, level: number, middle: number): string => {
      const points: Point[] = [
        [laneStart(board, lane) + board.laneWidth + 2, level],
        [lanesEnd(board) + 16, level],
        [lanesEnd(board) + 26, middle],
      ];
      return polyline(points, { stroke: colour(gapColour[kind]), 'stroke-width': 1.25, 'stroke-dasharray': '1.5 3' });
    };
    const level = (board: Board): number | null => gapMiddle({ sayings, board, colour: () => '' }, lane);
    const [low, high] = [volumes[from].value, volumes[to].value];
    const middle = isKnown(low) && isKnown(high) && saying.known ? (low + high) / 2 : Number.POSITIVE_INFINITY;
    return { middle, label: { lines, height: heightOfLines(lines), level, lead } satisfies Label };
  });
  labels.sort((one, other) => (one.middle === other.middle ? 0 : other.middle - one.middle));
  return [...labels.map(({ label }) => label), ...totalLabel(sayings)];
}

/** Under the gaps, with a rule above: what they add up to. It follows them and never pushes them. */
function totalLabel(sayings: Sayings): Label[] {
  const total = totalSpans(sayings);
  if (!total) return [];
  const lines = wrapped({ size: TYPE, spans: total }, SAYINGS, 3);
  return [{ lines, height: heightOfLines(lines), level: () => null, lead: () => '', weight: 1e-6 }];
}

interface Column {
  readonly labels: readonly Label[];
  readonly gap: number;
  readonly x: number;
  readonly end: boolean;
}

/** Where each label of a column stands: its top. */
export function columnTops(labels: readonly Label[], gap: number, board: Board): number[] {
  let last = CEILING - 8;
  const wants = labels.map(({ height, level, lines, weight }) => {
    const at = level(board);
    const top = at === null ? (weight === undefined ? CEILING - 8 : last) : at - height / 2 + (lines.length > 1 ? 2 : 0);
    last = top + height + gap;
    return { top, height, ...(weight === undefined ? {} : { weight }) };
  });
  return placed(wants, gap, CEILING - 10, board.ground + 2);
}

function drawnColumn(pen: Pen, { labels, gap, x, end }: Column): { leads: string; words: string } {
  const tops = columnTops(labels, gap, pen.board);
  let leads = '';
  let words = '';
  labels.forEach((label, place) => {
    const top = tops[place] ?? 0;
    const level = label.level(pen.board);
    if (level !== null) leads += label.lead(pen, level, top + label.height / 2);
    if (label.weight !== undefined) words += rule(pen.colour, x, top - 9);
    let y = top;
    for (const line of label.lines) {
      words += textLine(line, [x, y + ascent(line)], pen.colour, end);
      y += lineHeight(line);
    }
  });
  return { leads, words };
}

const rule = (colour: Colour, x: number, y: number): string =>
  polyline(
    [
      [x, y],
      [x + SAYINGS - 10, y],
    ],
    { stroke: colour('ink'), 'stroke-width': 1.5 },
  );

/** The board with names on the left and gaps on the right; it grows with its words and never cuts one. */
export function largeGauge(sayings: Sayings, colour: Colour, least: number): { width: number; height: number; body: string } {
  const names = nameLabels(sayings);
  const gaps = gapLabels(sayings);
  const needs = Math.max(columnHeight(names, NAME_GAP), columnHeight(gaps, SAYING_GAP));
  const height = Math.max(least, needs + CEILING + 28);
  const x = 44 + Math.max(NAMES, Math.ceil(widest(names)));
  const board: Board = {
    x,
    width: boardWidth(sayings),
    ceiling: CEILING,
    ground: height - 28,
    top: scaleTop(sayings.numbers),
    laneWidth: 16,
    laneGap: 10,
    reach: 6,
    small: SMALL,
  };
  const pen: Pen = { sayings, board, colour };
  const left = drawnColumn(pen, { labels: names, gap: NAME_GAP, x: x - 44, end: true });
  const right = drawnColumn(pen, { labels: gaps, gap: SAYING_GAP, x: lanesEnd(board) + 34, end: false });
  const width = lanesEnd(board) + 34 + Math.max(SAYINGS, Math.ceil(widest(gaps))) + 4;
  return { width, height, body: boardBack(pen) + right.leads + boardFront(pen) + left.leads + left.words + right.words };
}
