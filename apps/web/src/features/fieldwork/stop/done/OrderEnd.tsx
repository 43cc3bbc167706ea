import { FormattedMessage, useIntl } from 'react-intl';
import { useSays } from '../../../../says/use-says.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { Checkbox } from '../../../../ui/forms/Select.js';
import { Tap, Taps } from '../../../../ui/phone/Taps.js';
import { type End, isDecidable, isEnded } from './order-end.js';

interface Props {
  readonly order: {
    readonly id: string;
    readonly kind: string;
    readonly what: string;
    readonly state: string;
    readonly doneNote?: string | null;
    readonly finding?: { readonly state: string } | null;
  };
  readonly end: End | null;
  readonly onChange: (end: End) => void;
}

/** One work order: done, or for another day, with a note. */
export function OrderEnd({ order: { kind, what, state, doneNote, finding }, end, onChange }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const hasFinding = finding?.state === 'open' || finding?.state === 'in work';
  const usual: End = { done: true, note: '', resolvesFinding: hasFinding };
  return (
    <div className="order-end">
      <h2>
        {word('work', kind)}
        {what && `: ${what}`}
      </h2>
      {isEnded(state) && (
        <p>
          {word('workState', state)}
          {doneNote && `: ${doneNote}`}
        </p>
      )}
      {state === 'waiting for approval' && (
        <p>
          <FormattedMessage id="field.order.waits" />
        </p>
      )}
      {isDecidable(state) && (
        <>
          <Taps>
            <Tap
              words={intl.formatMessage({ id: 'field.order.done' })}
              isOn={end?.done === true}
              onTap={() => onChange({ ...(end ?? usual), done: true })}
            />
            <Tap
              words={intl.formatMessage({ id: 'field.order.otherDay' })}
              isOn={end?.done === false}
              onTap={() => onChange({ ...(end ?? usual), done: false })}
            />
          </Taps>
          {end && (
            <TextAreaField
              label={intl.formatMessage({ id: end.done ? 'field.order.doneNote' : 'field.order.leftNote' })}
              isOptional
              value={end.note}
              onChange={(note) => onChange({ ...end, note })}
            />
          )}
          {end?.done && hasFinding && (
            <Checkbox
              label={intl.formatMessage({ id: 'field.order.resolves' })}
              isChecked={end.resolvesFinding}
              onChange={(resolvesFinding) => onChange({ ...end, resolvesFinding })}
            />
          )}
        </>
      )}
    </div>
  );
}
