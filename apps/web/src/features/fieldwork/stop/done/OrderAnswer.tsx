import { useIntl } from 'react-intl';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { Checkbox } from '../../../../ui/forms/Select.js';
import { Tap, Taps } from '../../../../ui/phone/Taps.js';
import type { End } from './order-end.js';

interface Props {
  readonly end: End | null;
  readonly hasFinding: boolean;
  readonly onChange: (end: End) => void;
}

/** Done, or for another day, with a note; done settles the finding unless the crew says otherwise. */
export function OrderAnswer({ end, hasFinding, onChange }: Props) {
  const intl = useIntl();
  const now: End = end ?? { done: true, note: '', resolvesFinding: hasFinding };
  const tap = (done: boolean, words: string) => <Tap words={words} isOn={end?.done === done} onTap={() => onChange({ ...now, done })} />;
  return (
    <>
      <Taps>
        {tap(true, intl.formatMessage({ id: 'field.order.done' }))}
        {tap(false, intl.formatMessage({ id: 'field.order.otherDay' }))}
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
  );
}
