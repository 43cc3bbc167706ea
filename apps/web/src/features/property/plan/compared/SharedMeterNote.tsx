import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { clockInWords } from '../../../../programs/days-in-words.js';
import type { Names } from '../../../../says/names.js';
import type { Plan } from '../plan-document.js';

interface Props {
  readonly shared: Plan['sharedMeter'];
  readonly names: Names;
}

/** What both offers keep to because others water through the same meter. */
export function SharedMeterNote({ shared, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  if (!shared) return null;
  const { by, controllerIds, flowLPerMin, from, until } = shared;
  const others = intl.formatList(
    controllerIds.map((id) => names.of(id) ?? id),
    { type: 'conjunction' },
  );
  const values = { others, count: controllerIds.length, flow: formats.quantity('flow', flowLPerMin) };
  return (
    <p className="soft">
      {by === 'flow' ? (
        <FormattedMessage id="plan.shared.flow" values={values} />
      ) : (
        <FormattedMessage
          id="plan.shared.hours"
          values={{ ...values, from: clockInWords(formats, from), until: clockInWords(formats, until) }}
        />
      )}
    </p>
  );
}
