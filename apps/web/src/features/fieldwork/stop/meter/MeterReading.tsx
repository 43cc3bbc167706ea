import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { MeterToReadFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { NumberPad } from '../../../../ui/phone/NumberPad.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { SentLine } from '../../device/SentLine.js';
import { useDraft } from '../../device/use-draft.js';
import type { StepProps } from '../step-props.js';
import { JudgedRegister } from './JudgedRegister.js';
import { KeptReading } from './KeptReading.js';
import { isDoubtful, useJudgement } from './use-judgement.js';
import { useReading } from './use-reading.js';

export const meterToRead = graphql(`
  fragment MeterToRead on Meter {
    id
    name
    kind
    water
    unit
    resolution
    readings(first: 1) {
      id
      readAt
      register
    }
  }
`);

interface Props extends Pick<StepProps, 'frame' | 'now' | 'sending'> {
  readonly meter: FragmentType<MeterToReadFragment>;
  readonly stopId: string;
  readonly timeZone: string;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly switcher: (content: ReactNode) => ReactNode;
}

/** The register typed large; it says at once whether the number can be right, and Save always works. */
export function MeterReading({ meter: masked, stopId, timeZone, frame, now, sending, next, switcher }: Props) {
  const intl = useIntl();
  const { moment, number } = useFormats();
  const { word } = useSays();
  const meter = useMasked(meterToRead, masked);
  const [draft, setDraft, clearDraft] = useDraft(`reading.${stopId}.${meter.id}`, { typed: '', note: '' });
  const [wantsNote, setWantsNote] = useState(false);
  const [asks, setAsks] = useState(false);
  const judged = useJudgement({ meterId: meter.id, typed: draft.typed, now });
  const { save, kept, again, problem } = useReading({ meterId: meter.id, name: meter.name, stopId, now, send: sending.send });
  const isInDoubt = judged.judgement !== null && isDoubtful(judged.judgement.judgement);
  const last = meter.readings[0];
  const onSave = async (): Promise<void> => {
    setAsks(draft.typed === '');
    if (draft.typed !== '' && (await save(Number(draft.typed), draft.note.trim() || null))) clearDraft();
  };
  const actions = kept ? (
    <>
      <Button kind="plain" onClick={again}>
        <FormattedMessage id="field.meter.again" />
      </Button>
      <ButtonLink kind="main" to={next.to}>
        {next.words ?? <FormattedMessage id="field.meter.toSettings" />}
      </ButtonLink>
    </>
  ) : (
    <>
      <Button kind="plain" onClick={() => setWantsNote(true)}>
        <FormattedMessage id="field.note" />
      </Button>
      <Button kind="main" isBusy={sending.underWay > 0} onClick={() => void onSave()}>
        <FormattedMessage id={isInDoubt ? 'field.meter.saveAnyway' : 'field.meter.save'} />
      </Button>
    </>
  );
  return (
    <PhoneFrame {...frame} status={<SentLine sending={sending} />} actions={actions}>
      <h1>{meter.name}</h1>
      <p className="where">
        {word('meter', meter.kind)}, {word('water', meter.water)}
      </p>
      {switcher(
        kept ? (
          <KeptReading reading={kept} unit={meter.unit} />
        ) : (
          <>
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
            <NumberPad
              name={intl.formatMessage({ id: 'field.meter.register' }, { name: meter.name })}
              value={draft.typed}
              onChange={(typed) => setDraft({ ...draft, typed })}
              unit={meter.unit}
            />
            {asks && draft.typed === '' ? (
              <p className="judged" role="alert">
                <FormattedMessage id="field.meter.empty" />
              </p>
            ) : (
              <JudgedRegister judged={judged} unit={meter.unit} timeZone={timeZone} onLikely={(typed) => setDraft({ ...draft, typed })} />
            )}
            {problem ? <ErrorState problem={problem} onRetry={() => void onSave()} /> : null}
            {(wantsNote || isInDoubt || draft.note !== '') && (
              <TextAreaField
                label={intl.formatMessage({ id: isInDoubt ? 'field.meter.noteDoubt' : 'field.note' })}
                isOptional
                value={draft.note}
                onChange={(note) => setDraft({ ...draft, note })}
              />
            )}
          </>
        ),
      )}
    </PhoneFrame>
  );
}
