import { useIntl } from 'react-intl';

interface Props {
  readonly at: number;
  readonly count: number;
  readonly label: string;
}

const WIDTH = 358;
const MOST_DRAWN = 16;

/** Where in the walk this zone is: those before it are filled. */
export function ZoneStrip({ at, count, label }: Props) {
  const intl = useIntl();
  const name = intl.formatMessage({ id: 'field.zones.strip' }, { number: at + 1, count });
  if (count > MOST_DRAWN) return <p className="where">{name}</p>;
  const step = WIDTH / count;
  const wide = Math.min(26, step - 6);
  return (
    <svg className="zone-strip" viewBox={`0 0 ${WIDTH} 26`} role="img" aria-label={name}>
      {Array.from({ length: count }, (_, place) => {
        const x = place * step + 1;
        if (place !== at) return <rect key={x} x={x} y="7" width={wide} height="12" className={place < at ? 'walked' : undefined} />;
        return (
          <g key={x}>
            <rect x={x} y="1" width={wide} height="24" />
            {label.length <= 2 && wide >= 20 && (
              <text x={x + wide / 2} y="19" textAnchor="middle">
                {label}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
