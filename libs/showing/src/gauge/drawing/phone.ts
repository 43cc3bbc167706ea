import { boardBack, boardFront, boardWidth, heightOf, knownMarks, lanesEnd, markEnd, type Pen } from './board.js';
import { GAPS, isKnown, MARKS, type Mark } from './model.js';
import { columnHeight, placed } from './place.js';
import { gapSaying, plain, type Sayings, totalSpans, volumeParts } from './say.js';
import { scaleTop } from './scale.js';
import { gapBox, markShape } from './shapes.js';
import { markColour, type Point, polyline, rect, textLine } from './svg.js';
import { ascent, type Line, lineHeight, lineWidth, type Span, wrapped } from './text.js';

const TYPE = 18;
const SMALL = 16;
const CEILING = 20;
const LEAST = 340;
const LABEL_GAP = 6;
const LIST_GAP = 14;

interface Label {
  readonly mark: Mark;
  /** The mark's level in the scale's own numbers; null where the volume is missing. */
  readonly value: number | null;
  readonly lines: readonly Line[];
  readonly height: number;
}

const heightOfLines = (lines: readonly Line[]): number => lines.reduce((sum, line) => sum + lineHeight(line), 0);

function knownLines(sayings: Sayings, mark: Mark, room: number): Line[] {
  const { name, volume, spread } = volumeParts(sayings, mark);
  const number: Line = { size: TYPE, spans: volume };
  if (!spread) return [plain(name, SMALL, true), ...wrapped(number, room)];
  const soft: Span = { text: ` ${spread}`, soft: true, size: SMALL };
  const together: Line = { size: TYPE, spans: [...volume, soft] };
  const fits = lineWidth(together) <= room;
  return [plain(name, SMALL, true), ...(fits ? [together] : [...wrapped(number, room), plain(spread, SMALL, true)])];
}

function markLabels(sayings: Sayings, room: number): Label[] {
  const label = (mark: Mark, value: number | null, lines: readonly Line[]): Label => ({ mark, value, lines, height: heightOfLines(lines) });
  const absent = MARKS.filter((mark) => !isKnown(sayings.numbers.volumes[mark].value)).map((mark) => {
    const reason = sayings.numbers.volumes[mark].missing;
    const head = wrapped(plain(`${sayings.words.marks[mark]}: ${sayings.words.missing}`, TYPE), room, 2);
    return label(mark, null, [...head, ...(reason ? wrapped(plain(reason, SMALL, true), room, 6) : [])]);
  });
  const known = knownMarks(sayings).map(({ mark, value }) => label(mark, value, knownLines(sayings, mark, room)));
  return [...absent, ...known.sort((one, other) => (other.value ?? 0) - (one.value ?? 0))];
}

function drawnLabels(pen: Pen, labels: readonly Label[]): string {
  const { board, colour } = pen;
  const end = lanesEnd(board);
  const wants = labels.map(({ value, height }) => ({ top: value === null ? 0 : heightOf(board, value) - height / 2, height }));
  const tops = placed(wants, LABEL_GAP, CEILING - 14, board.ground + 2);
  return labels
    .map(({ mark, value, lines, height }, place) => {
      const top = tops[place] ?? 0;
      const words = stacked(pen, lines, [end + 30, top]);
      if (value === null) return words;
      const [level, middle] = [heightOf(board, value), top + height / 2];
      const elbow: Point[] = [
        [markEnd(board, mark) + 2, level],
        [end + 6, level],
        [end + 14, middle],
      ];
      return (
        polyline(elbow, { stroke: colour(markColour[mark]), 'stroke-width': 1.25 }) + markShape(mark, end + 20, middle, colour) + words
      );
    })
    .join('');
}

function stacked({ colour }: Pen, lines: readonly Line[], [x, top]: Point): string {
  let y = top;
  return lines
    .map((line) => {
      const words = textLine(line, [x, y + ascent(line)], colour);
      y += lineHeight(line);
      return words;
    })
    .join('');
}

interface Listed {
  readonly body: string;
  readonly bottom: number;
}

/** The gaps underneath, from metered down to allowed, each with its texture; under them what they add up to. */
function gapList(pen: Pen, from: number, width: number): Listed {
  const { sayings, colour } = pen;
  const room = width - 32;
  let y = from;
  let body = '';
  for (const { kind } of [...GAPS].reverse()) {
    const saying = gapSaying(sayings, kind);
    const gap = sayings.numbers.gaps[kind];
    const about = saying.known
      ? [...wrapped({ size: TYPE, spans: saying.amount }, room), ...wrapped(plain(saying.comparison, SMALL, true), room, 2)]
      : wrapped(plain(saying.comparison, SMALL), room, 3);
    const lines = gap.within && saying.known ? [...about, ...wrapped(plain(saying.note, SMALL, true), room, 3)] : about;
    const box = { x: 4, y: y + 2, width: 14, height: Math.max(20, heightOfLines(lines) - 4) };
    body += saying.known
      ? gapBox(kind, box, { below: (gap.value ?? 0) < 0, within: gap.within ?? false }, colour)
      : rect(box, { fill: 'none', stroke: colour('rule-2'), 'stroke-dasharray': '2 4' });
    body += stacked(pen, lines, [28, y]);
    y += heightOfLines(lines) + LIST_GAP;
  }
  const total = totalSpans(sayings);
  if (!total) return { body, bottom: y - LIST_GAP };
  const lines = wrapped({ size: TYPE, spans: total }, room);
  body +=
    polyline(
      [
        [4, y - 3],
        [width - 4, y - 3],
      ],
      { stroke: colour('ink'), 'stroke-width': 1.5 },
    ) + stacked(pen, lines, [28, y + 5]);
  return { body, bottom: y + 5 + heightOfLines(lines) };
}

/** The board with its names on the right, and the gaps underneath, for any width from 280. */
export function phoneGauge(sayings: Sayings, colour: Pen['colour'], width: number): { width: number; height: number; body: string } {
  const shape = {
    x: 16,
    width: boardWidth(sayings),
    ceiling: CEILING,
    top: scaleTop(sayings.numbers),
    laneWidth: 14,
    laneGap: 6,
    reach: 0,
    small: SMALL,
  };
  const room = width - lanesEnd({ ...shape, ground: 0 }) - 30;
  const labels = markLabels(sayings, room);
  const standing = Math.max(LEAST, columnHeight(labels, LABEL_GAP) + CEILING + 28);
  const pen: Pen = { sayings, colour, board: { ...shape, ground: standing - 28 } };
  const list = gapList(pen, standing + 8, width);
  return { width, height: list.bottom + 6, body: boardBack(pen) + boardFront(pen) + drawnLabels(pen, labels) + list.body };
}
