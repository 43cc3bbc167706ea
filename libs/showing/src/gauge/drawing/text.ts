import { textWidth } from './glyph-widths.js';

export interface Span {
  readonly text: string;
  readonly bold?: boolean;
  readonly soft?: boolean;
  /** Where it differs from the line's. */
  readonly size?: number;
}

export interface Line {
  readonly size: number;
  readonly spans: readonly Span[];
}

const spanWidth = (span: Span, size: number): number => textWidth(span.text, span.size ?? size, span.bold);

export const lineWidth = (line: Line): number => line.spans.reduce((sum, span) => sum + spanWidth(span, line.size), 0);

/** From one baseline to the next, and from a line's top to its baseline. */
export const lineHeight = (line: Line): number => Math.round(line.size * 1.25);
export const ascent = (line: Line): number => Math.round(line.size * 0.97);

/** Words and the spaces before them, each in the style of its span. */
const pieces = (line: Line): Span[] =>
  line.spans.flatMap((span) => (span.text.match(/ *[^ ]+| +$/g) ?? []).map((text) => ({ ...span, text })));

/** Cuts a word that no line can hold. */
function cut(piece: Span, size: number, width: number): Span[] {
  const parts: Span[] = [];
  let text = '';
  for (const character of piece.text.trimStart()) {
    if (text && spanWidth({ ...piece, text: text + character }, size) > width) {
      parts.push({ ...piece, text });
      text = '';
    }
    text += character;
  }
  return [...parts, { ...piece, text }];
}

/** Breaks a line at spaces so that none is wider than `width`; past `most` lines the rest is an ellipsis. */
export function wrapped(line: Line, width: number, most = Number.POSITIVE_INFINITY): Line[] {
  const lines: Span[][] = [[]];
  let room = width;
  const start = (piece: Span): void => {
    const bare = { ...piece, text: piece.text.trimStart() };
    lines.push([bare]);
    room = width - spanWidth(bare, line.size);
  };
  for (const whole of pieces(line)) {
    const isLong = spanWidth({ ...whole, text: whole.text.trim() }, line.size) > width;
    for (const piece of isLong ? cut(whole, line.size, width) : [whole]) {
      const needs = spanWidth(piece, line.size);
      if (needs <= room) {
        lines.at(-1)?.push(piece);
        room -= needs;
      } else start(piece);
    }
  }
  const full = lines.filter((spans) => spans.length > 0).map((spans) => ({ size: line.size, spans }));
  return full.length <= most ? full : [...full.slice(0, most - 1), ellipsis(full.slice(most - 1)[0] ?? line, width)];
}

/** The line with its end given up for an ellipsis that fits. */
function ellipsis(line: Line, width: number): Line {
  const spans = [...line.spans];
  const dots: Span = { ...spans.at(-1), text: '…' };
  while (spans.length > 0 && lineWidth({ size: line.size, spans: [...spans, dots] }) > width) {
    const last = spans.pop();
    const shorter = last && [...last.text].slice(0, -1).join('');
    if (last && shorter) spans.push({ ...last, text: shorter });
  }
  return { size: line.size, spans: [...spans, dots] };
}
