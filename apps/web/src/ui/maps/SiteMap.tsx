import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { metresFromFeet } from '@rillbook/units/length.js';
import type { MessageId } from '../../i18n/catalogue.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { EmptyState } from '../states/States.js';
import { type Extent, LABEL_SIZE, type MapMark, type MapPlace, mapLayout, type Placed, projection, scaleBar } from './layout.js';
import { MarkShape } from './MarkShape.js';
import './maps.css';

interface Props {
  readonly places: readonly MapPlace[];
  /** How many properties of the list have no position. */
  readonly withoutPosition?: number;
  readonly chosen?: string | null;
  readonly onChoose: (id: string) => void;
  readonly extent?: Extent;
}

const USUAL: Extent = { width: 288, height: 470 };
const MARK_WORDS: Readonly<Record<MapMark, MessageId>> = {
  unexplained: 'maps.unexplained',
  settings: 'maps.settings',
  under: 'maps.under',
  near: 'maps.near',
  unknown: 'maps.unknown',
};
const FEET_PER_MILE = 5280;

/** Where the properties lie, drawn from their positions alone: it needs no tiles and no network. One stop for the keyboard; arrows walk the list. */
export function SiteMap({ places, withoutPosition = 0, chosen = null, onChoose, extent = USUAL }: Props) {
  const intl = useIntl();
  const inOrder = useMemo(() => mapLayout(places, extent).sort(byRank), [places, extent]);
  const [at, setAt] = useState(0);
  const elements = useRef(new Map<string, SVGGElement>());
  if (places.length === 0) return <EmptyState sentence={intl.formatMessage({ id: 'maps.noPlaces' })} />;
  const here = Math.min(at, inOrder.length - 1);
  const walk = (event: KeyboardEvent, place: MapPlace): void => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onChoose(place.id);
    }
    const next = nextOf(event.key, here, inOrder.length);
    if (next === null) return;
    event.preventDefault();
    setAt(next);
    elements.current.get(inOrder[next]?.place.id ?? '')?.focus();
  };
  return (
    <div>
      <svg
        className="map"
        viewBox={`0 0 ${extent.width} ${extent.height}`}
        width={extent.width}
        height={extent.height}
        role="group"
        aria-label={intl.formatMessage({ id: 'maps.name' }, { count: places.length })}
      >
        <Ground places={places} extent={extent} />
        {/* The first of the list is drawn last, over the others. */}
        {[...inOrder].reverse().map((spot) => (
          <g
            key={spot.place.id}
            ref={(element) => {
              if (element) elements.current.set(spot.place.id, element);
              else elements.current.delete(spot.place.id);
            }}
            role="link"
            className={spot.place.id === chosen ? 'spot chosen' : 'spot'}
            tabIndex={inOrder[here] === spot ? 0 : -1}
            aria-label={nameOf(spot, intl.formatMessage({ id: MARK_WORDS[spot.place.mark] }))}
            onClick={() => onChoose(spot.place.id)}
            onKeyDown={(event) => walk(event, spot.place)}
            onFocus={() => setAt(inOrder.indexOf(spot))}
          >
            <Spot spot={spot} />
          </g>
        ))}
      </svg>
      {withoutPosition > 0 && (
        <p className="xs soft">
          <FormattedMessage id="maps.withoutPosition" values={{ count: withoutPosition }} />
        </p>
      )}
    </div>
  );
}

const byRank = (one: Placed, other: Placed): number => (one.place.rank ?? Number.MAX_VALUE) - (other.place.rank ?? Number.MAX_VALUE);

/** Where an arrow leads in the order of the list. */
function nextOf(key: string, here: number, count: number): number | null {
  const next = { ArrowRight: here + 1, ArrowDown: here + 1, ArrowLeft: here - 1, ArrowUp: here - 1, Home: 0, End: count - 1 }[key];
  return next === undefined ? null : Math.min(count - 1, Math.max(0, next));
}

const nameOf = ({ place }: Placed, mark: string): string => `${place.rank === null ? '' : `${place.rank}. `}${place.name}: ${mark}`;

function Spot({ spot: { place, x, y, half, label } }: { readonly spot: Placed }) {
  return (
    <>
      <title>{place.name}</title>
      <circle className="touch" cx={x} cy={y} r={Math.max(12, half + 3)} />
      <MarkShape mark={place.mark} x={x} y={y} half={half} />
      {label && (
        <text x={label.x} y={label.y} fontSize={LABEL_SIZE} fontWeight="700">
          {place.rank}
        </text>
      )}
    </>
  );
}

/** A faint grid as wide as the scale bar, the bar itself, and which way is north. */
function Ground({ places, extent }: { readonly places: readonly MapPlace[]; readonly extent: Extent }) {
  const intl = useIntl();
  const { units, number } = useFormats();
  const { metresPerUnit } = projection(places, extent);
  const [big, small] = units === 'us' ? [metresFromFeet(FEET_PER_MILE), metresFromFeet(1)] : [1000, 1];
  const bar = scaleBar(metresPerUnit, extent.width, big, small);
  const step = bar.metres / metresPerUnit;
  const unit: MessageId = units === 'us' ? (bar.isBig ? 'unit.mi' : 'unit.ft') : bar.isBig ? 'unit.km' : 'unit.m';
  const words = `${number(bar.count, 2)} ${intl.formatMessage({ id: unit })}`;
  const [foot, right] = [extent.height - 10, extent.width];
  const lines = [
    ...Array.from({ length: Math.floor(right / step) }, (_, place) => `M${(place + 1) * step} 0V${extent.height - 28}`),
    ...Array.from({ length: Math.floor((extent.height - 28) / step) }, (_, place) => `M0 ${(place + 1) * step}H${right}`),
  ];
  return (
    <g aria-hidden="true">
      <path d={lines.join('')} stroke="var(--rule)" strokeWidth="1" fill="none" />
      <path d={`M1 ${foot - 6}v6h${step}v-6`} stroke="var(--ink-2)" strokeWidth="1.5" fill="none" />
      <text className="soft-mark" x={step + 8} y={foot + 1} fontSize={LABEL_SIZE}>
        {words}
      </text>
      <path d={`M${right - 8} ${foot - 14}l4 8h-8z`} fill="var(--ink-2)" />
      <text className="soft-mark" x={right - 13} y={foot + 5} fontSize={11}>
        {intl.formatMessage({ id: 'maps.north' })}
      </text>
    </g>
  );
}

/** What the marks mean. */
export function MapKey() {
  const marks: readonly MapMark[] = ['unexplained', 'settings', 'under', 'near', 'unknown'];
  return (
    <ul className="key down">
      {marks.map((mark) => (
        <li key={mark}>
          <svg width="16" height="14" viewBox="0 0 16 14" aria-hidden="true">
            <MarkShape mark={mark} x={8} y={7} half={mark === 'near' ? 3.5 : 6} />
          </svg>
          <FormattedMessage id={MARK_WORDS[mark]} />
        </li>
      ))}
      <li>
        <FormattedMessage id="maps.key" />
      </li>
    </ul>
  );
}
