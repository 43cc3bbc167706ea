import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import type { Kept } from './use-reading.js';

interface Props {
  readonly reading: Kept;
  readonly unit: string;
}

/** The reading as it was kept. */
export function KeptReading({ reading, unit }: Props) {
  const { number, time } = useFormats();
  const { volume, word } = useSays();
  return (
    <div role="status">
      <div className="register">
        <b>{number(reading.register, 3)}</b>
        <span>{unit}</span>
      </div>
      <p className="judged">
        {reading.isOther ? (
          <FormattedMessage id="field.meter.other" values={{ by: reading.by ?? 'nobody', time: time(reading.readAt) }} />
        ) : (
          <FormattedMessage
            id="field.meter.kept"
            values={{
              time: time(reading.readAt),
              isKnown: String(reading.litresSinceLast !== null),
              volume: volume(reading.litresSinceLast),
              judgement: word('judgement', reading.judgement),
            }}
          />
        )}
        {reading.note && <span className="line"> {reading.note}</span>}
      </p>
    </div>
  );
}
