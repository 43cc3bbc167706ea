import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { NumberPad } from '../../../../ui/phone/NumberPad.js';
import { JudgedRegister } from './JudgedRegister.js';
import type { Judgement } from './use-judgement.js';

interface Draft {
  readonly typed: string;
  readonly note: string;
}

interface Props {
  readonly meter: { readonly name: string; readonly unit: string };
  /** The reading that stands before this one. */
  readonly last: LastProps['last'];
  readonly timeZone: string;
  readonly draft: Draft;
  readonly onChange: (change: Partial<Draft>) => void;
  readonly judged: Judgement | null;
  readonly isInDoubt: boolean;
  readonly wantsNote: boolean;
  /** Save was pressed with nothing typed. */
  readonly isEmptyAsked: boolean;
}

/** The register and the keys; it says at once whether the number can be right. */
export function RegisterForm({ meter, last, timeZone, draft, onChange, judged, isInDoubt, wantsNote, isEmptyAsked }: Props) {
  const intl = useIntl();
  return (
    <>
      <LastReading last={last} timeZone={timeZone} />
      <NumberPad
        name={intl.formatMessage({ id: 'field.meter.register' }, { name: meter.name })}
        value={draft.typed}
        onChange={(typed) => onChange({ typed })}
        unit={meter.unit}
      />
      {isEmptyAsked ? (
        <p className="judged" role="alert">
          <FormattedMessage id="field.meter.empty" />
        </p>
      ) : (
        <JudgedRegister judged={judged} unit={meter.unit} timeZone={timeZone} onLikely={(typed) => onChange({ typed })} />
      )}
      {(wantsNote || isInDoubt || draft.note !== '') && (
        <TextAreaField
          label={intl.formatMessage({ id: isInDoubt ? 'field.meter.noteDoubt' : 'field.note' })}
          isOptional
          value={draft.note}
          onChange={(note) => onChange({ note })}
        />
      )}
    </>
  );
}

interface LastProps {
  readonly last: { readonly register: number; readonly readAt: string } | null;
  readonly timeZone: string;
}

function LastReading({ last, timeZone }: LastProps) {
  const { moment, number } = useFormats();
  return (
    <p className="where">
      {last ? (
        <FormattedMessage
          id="field.meter.last"
          values={{ register: <b className="num">{number(last.register, 3)}</b>, when: moment(last.readAt, timeZone) }}
        />
      ) : (
        <FormattedMessage id="field.meter.noLast" />
      )}
    </p>
  );
}
