import type { GapKind, Mark } from './model.js';
import { type Box, type Colour, circle, gapColour, markColour, path, rect, tenth } from './svg.js';

/** The four marks keep their shapes everywhere: a lid, a disc, a square, the surveyor's water-level triangle. */
export function markShape(mark: Mark, x: number, y: number, colour: Colour, half = 5): string {
  const fill = colour(markColour[mark]);
  switch (mark) {
    case 'allowed':
      return rect({ x: x - half, y: y - 2, width: 2 * half, height: 4 }, { fill, 'data-mark': mark });
    case 'needed':
      return `<g data-mark="needed">${circle(x, y, half, fill)}</g>`;
    case 'programmed': {
      const side = 2 * half - 2;
      return rect(
        { x: x - half + 1, y: y - half + 1, width: side, height: side },
        { fill: colour('paper'), stroke: fill, 'stroke-width': 2, 'data-mark': mark },
      );
    }
    case 'metered':
      return path(`M${tenth(x - half)} ${tenth(y - half * 0.8)}h${2 * half}l${-half} ${tenth(half * 1.6)}z`, { fill, 'data-mark': mark });
  }
}

/** Slanting lines inside a box, falling or rising by one for each one across. */
function slanted(box: Box, step: number, falls: boolean): string {
  let d = '';
  for (let start = -box.height; start < box.width; start += step) {
    const left = Math.max(0, start);
    const right = Math.min(box.width, start + box.height);
    if (right - left < 0.5) continue;
    const y = (across: number): number => (falls ? box.y + across - start : box.y + box.height - across + start);
    d += `M${tenth(box.x + left)} ${tenth(y(left))}L${tenth(box.x + right)} ${tenth(y(right))}`;
  }
  return d;
}

function ruled(box: Box): string {
  let d = '';
  for (let y = box.y + 3; y < box.y + box.height; y += 4) d += `M${tenth(box.x)} ${tenth(y)}h${tenth(box.width)}`;
  return d;
}

/** A gap's texture as plain lines: a <pattern> needs ids, which collide, and PDF writers disagree about it. */
function texture(kind: GapKind, box: Box): string {
  if (kind === 'landscape') return ruled(box);
  if (kind === 'settings') return slanted(box, 6, false);
  return slanted(box, 5, false) + slanted(box, 5, true);
}

export interface GapState {
  readonly below: boolean;
  readonly within: boolean;
}

/** Hatched: water that ran. Open: water that did not (a gap below). Open and dashed: within what can be measured. */
export function gapBox(kind: GapKind, box: Box, { below, within }: GapState, colour: Colour): string {
  const stroke = colour(gapColour[kind]);
  const lines = within || below ? '' : path(texture(kind, box), { stroke, 'stroke-width': kind === 'unexplained' ? 1.5 : 1.25 });
  const edge = within ? { 'stroke-width': 1.75, 'stroke-dasharray': '3 3' } : { 'stroke-width': 1.25 };
  return `<g data-gap="${kind}">${rect(box, { fill: colour('paper') })}${lines}${rect(box, { fill: 'none', stroke, ...edge })}</g>`;
}
