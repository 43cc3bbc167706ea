import { FormattedMessage } from 'react-intl';
import { drawGauge } from '@rillbook/showing/gauge/draw-gauge.js';
import type { GaugeNumbers } from '@rillbook/showing/gauge/drawing/model.js';
import { useGaugeWords } from './use-gauge-words.js';

/** A made-up row for the key: no volume of anyone's. */
const EXAMPLE: GaugeNumbers = {
  volumes: { allowed: { value: 100 }, needed: { value: 88 }, programmed: { value: 128 }, metered: { value: 156 } },
  gaps: { landscape: { value: -12 }, settings: { value: 40 }, unexplained: { value: 28 } },
  aboveAllowed: { value: 56 },
  scaleTop: 200,
};

/** How to read the gauges of a list. */
export function GaugeKey() {
  const { words } = useGaugeWords(0);
  return (
    <div className="gauge-key">
      <p className="xs soft">
        <FormattedMessage id="gauge.key.title" />
      </p>
      <div className="gauge-place" aria-hidden="true" dangerouslySetInnerHTML={{ __html: drawGauge(EXAMPLE, words, { size: 'row' }) }} />
      <ul className="key down">
        <li>
          <Sample d="M8 0v14" stroke="var(--ink)" />
          <FormattedMessage id="gauge.key.allowed" />
        </li>
        <li>
          <svg width="16" height="14" viewBox="0 0 16 14" aria-hidden="true">
            <circle cx="8" cy="7" r="4" fill="var(--water)" />
          </svg>
          <FormattedMessage id="gauge.needed" />
        </li>
        <li>
          <Sample d="M1 2h14v10h-14zM1 8l6-6M3 12l10-10M9 12l6-6" stroke="var(--amber)" />
          <FormattedMessage id="gauge.key.settings" />
        </li>
        <li>
          <Sample d="M1 2h14v10h-14zM1 7l5-5M1 12l10-10M6 12l9-9M11 12l4-4M1 7l5 5M1 2l10 10M6 2l9 9M11 2l4 4" stroke="var(--clay)" />
          <FormattedMessage id="gauge.key.unexplained" />
        </li>
        <li>
          <Sample d="M1 2h14v10h-14z" stroke="var(--clay)" />
          <FormattedMessage id="gauge.key.open" />
        </li>
        <li>
          <svg width="16" height="14" viewBox="0 0 16 14" aria-hidden="true">
            <path d="M3 3h10l-5 8z" fill="var(--clay)" />
          </svg>
          <FormattedMessage id="gauge.metered" />
        </li>
      </ul>
    </div>
  );
}

const Sample = ({ d, stroke }: { readonly d: string; readonly stroke: string }) => (
  <svg width="16" height="14" viewBox="0 0 16 14" aria-hidden="true">
    <path d={d} fill="none" stroke={stroke} strokeWidth="1.25" />
  </svg>
);
