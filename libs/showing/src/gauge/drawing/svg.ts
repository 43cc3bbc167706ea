import { type ColourName, printed, themed } from '../../colours/paper-colours.js';
import type { GapKind, Mark } from './model.js';
import type { Line } from './text.js';

export type Colour = (name: ColourName) => string;
export const colourFor = (onPaper: boolean): Colour => (onPaper ? printed : themed);

export const markColour: Readonly<Record<Mark, ColourName>> = { allowed: 'ink', needed: 'water', programmed: 'amber', metered: 'clay' };
export const gapColour: Readonly<Record<GapKind, ColourName>> = { landscape: 'slate', settings: 'amber', unexplained: 'clay' };

type Attributes = Readonly<Record<string, string | number | undefined>>;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
// biome-ignore lint: control characters are exactly what XML forbids
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** Words as text: nothing in them can become markup, or break a reader of XML. */
export const escaped = (words: string): string => words.replace(FORBIDDEN, '').replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);

/** Rounds to a tenth: enough for a screen and a printer, and half the bytes. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

const written = (attributes: Attributes): string =>
  Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? tenth(value) : escaped(String(value))}"`)
    .join('');

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const rect = (box: Box, attributes: Attributes): string =>
  `<rect${written({ x: box.x, y: box.y, width: Math.max(0, box.width), height: Math.max(0, box.height), ...attributes })}/>`;

export const path = (d: string, attributes: Attributes): string => `<path${written({ d, fill: 'none', ...attributes })}/>`;

export type Point = readonly [x: number, y: number];

export const polyline = (points: readonly Point[], attributes: Attributes): string =>
  path(points.map(([x, y], place) => `${place === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`).join(''), attributes);

export const circle = (x: number, y: number, r: number, fill: string): string => `<circle${written({ cx: x, cy: y, r, fill })}/>`;

/** One line of words at a baseline; `end` puts its end there. */
export function textLine(line: Line, at: Point, colour: Colour, end = false): string {
  const anchor = end ? { 'text-anchor': 'end' } : {};
  const spans = line.spans.map((span) => {
    const style = { 'font-weight': span.bold ? 700 : undefined, fill: span.soft ? colour('ink-2') : undefined, 'font-size': span.size };
    return `<tspan${written(style)}>${escaped(span.text)}</tspan>`;
  });
  return `<text${written({ x: at[0], y: at[1], 'font-size': line.size, fill: colour('ink'), ...anchor })}>${spans.join('')}</text>`;
}

/** The whole drawing with its accessible name. */
export const drawing = (kind: string, size: { readonly width: number; readonly height: number }, name: string, body: string): string =>
  `<svg${written({ xmlns: 'http://www.w3.org/2000/svg', class: `gauge gauge-${kind}`, viewBox: `0 0 ${tenth(size.width)} ${tenth(size.height)}`, width: size.width, height: size.height, role: 'img', 'aria-label': name })}>${body}</svg>`;
