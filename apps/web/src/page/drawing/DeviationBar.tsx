const WIDTH = 210;
/** Too little has a third of the room: it is the rarer and the smaller. */
const ZERO = 70;
const [TOP, BOTTOM] = [3, 17];
const HATCH = 6;

/** The largest of either side in a column, so that all its bars share one scale. */
export interface DeviationScale {
  readonly under: number;
  readonly over: number;
}

interface Props {
  readonly under: number | null | undefined;
  readonly over: number | null | undefined;
  readonly scale: DeviationScale;
}

/** Too little to the left, open; too much to the right, hatched. Never set off against each other. The figures stand beside it. */
export function DeviationBar({ under, over, scale }: Props) {
  const perLitre = Math.min(
    scale.under > 0 ? ZERO / scale.under : Number.POSITIVE_INFINITY,
    scale.over > 0 ? (WIDTH - ZERO) / scale.over : Number.POSITIVE_INFINITY,
  );
  const [left, right] = [(under ?? 0) * perLitre, (over ?? 0) * perLitre];
  return (
    <svg width={WIDTH + 2} height="20" viewBox={`-1 0 ${WIDTH + 2} 20`} aria-hidden="true">
      {left > 0.5 && <path d={boxOf(ZERO - left, ZERO)} fill="none" stroke="var(--water)" strokeWidth="1.5" data-side="under" />}
      {right > 0.5 && (
        <path
          d={boxOf(ZERO, ZERO + right) + hatchOf(ZERO, ZERO + right)}
          fill="none"
          stroke="var(--amber)"
          strokeWidth="1.25"
          data-side="over"
        />
      )}
      <path d={`M${ZERO} 0V20`} stroke="var(--ink)" strokeWidth="1.5" />
    </svg>
  );
}

const boxOf = (from: number, to: number): string => `M${from} ${TOP}H${to}V${BOTTOM}H${from}z`;

/** Slanted lines, cut at the ends of the box. */
function hatchOf(from: number, to: number): string {
  const height = BOTTOM - TOP;
  let lines = '';
  for (let x = from - height + HATCH; x < to; x += HATCH) {
    const [start, end] = [Math.max(from, x), Math.min(to, x + height)];
    lines += `M${start} ${BOTTOM - (start - x)}L${end} ${BOTTOM - (end - x)}`;
  }
  return lines;
}
