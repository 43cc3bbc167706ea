import { FormattedMessage, useIntl } from 'react-intl';
import { type DayPlace, daySketch, HALF } from './day-sketch.js';

interface Props {
  readonly start: { readonly latitude: number; readonly longitude: number } | null;
  /** The stops in their order; one whose position is not known has none. */
  readonly stops: readonly { readonly name: string; readonly latitude: number | null; readonly longitude: number | null }[];
}

const EXTENT = { width: 640, height: 240 };
const SIZE = 13;

/** The day's stops where they lie, drawn from their positions alone: it needs no tiles and no network. Lines show the order, not the roads. */
export function SheetMap({ start, stops }: Props) {
  const intl = useIntl();
  const known = stops.flatMap(({ latitude, longitude }, at): DayPlace[] =>
    latitude === null || longitude === null ? [] : [{ number: at + 1, latitude, longitude }],
  );
  if (known.length < 2) return null;
  const places = daySketch(start ? [{ number: null, ...start }, ...known] : known, EXTENT);
  const way = start ? [...places, places[0]!] : places;
  return (
    <figure className="sheet-map">
      <svg
        viewBox={`0 0 ${EXTENT.width} ${EXTENT.height}`}
        role="img"
        aria-label={intl.formatMessage({ id: 'sheet.map' }, { stops: known.length })}
      >
        <polyline points={way.map(({ x, y }) => `${x},${y}`).join(' ')} />
        {places.map(({ number, x, y }) =>
          number === null ? (
            <rect key="start" x={x - HALF} y={y - HALF} width={2 * HALF} height={2 * HALF} />
          ) : (
            <g key={number}>
              <circle cx={x} cy={y} r={HALF} />
              <text x={x} y={y + SIZE / 3} fontSize={SIZE} textAnchor="middle">
                {number}
              </text>
            </g>
          ),
        )}
      </svg>
      <figcaption className="soft xs">
        <FormattedMessage id="sheet.mapHow" values={{ hasStart: String(start !== null), missing: stops.length - known.length }} />
      </figcaption>
    </figure>
  );
}
