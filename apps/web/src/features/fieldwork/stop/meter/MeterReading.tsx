import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { MeterToReadFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { useDraft } from '../../device/use-draft.js';
import type { StepProps } from '../step-props.js';
import { namedAs } from '../named.js';
import { KeptReading } from './KeptReading.js';
import { ReadingActions } from './ReadingActions.js';
import { RegisterForm } from './RegisterForm.js';
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

/** One meter: what it showed last, the register typed large, and Save, which always works. */
export function MeterReading({ meter: masked, stopId, timeZone, frame, now, sending, next, switcher }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const meter = useMasked(meterToRead, masked);
  const [draft, setDraft, clearDraft] = useDraft(`reading.${stopId}.${meter.id}`, { typed: '', note: '' });
  const [wantsNote, setWantsNote] = useState(false);
  const [asks, setAsks] = useState(false);
  const judged = useJudgement({ meterId: meter.id, typed: draft.typed, now });
  const { save, kept, again, problem } = useReading({ meterId: meter.id, name: meter.name, stopId, now, send: sending.send });
  const isInDoubt = judged.judgement !== null && isDoubtful(judged.judgement.judgement);
  const onSave = async (): Promise<void> => {
    setAsks(draft.typed === '');
    if (draft.typed !== '' && (await save(Number(draft.typed), draft.note.trim() || null))) clearDraft();
  };
  const actions = (
    <ReadingActions
      isKept={kept !== null}
      isInDoubt={isInDoubt}
      isBusy={sending.underWay > 0}
      next={next}
      onAgain={again}
      onNote={() => setWantsNote(true)}
      onSave={() => void onSave()}
    />
  );
  return (
    <PhoneFrame {...frame} status={<SentLine sending={sending} />} actions={actions}>
      <h1>{namedAs(intl, 'field.named.meter', meter.name)}</h1>
      <p className="where">
        {word('meter', meter.kind)}, {word('water', meter.water)}
      </p>
      {switcher(
        kept ? (
          <KeptReading reading={kept} unit={meter.unit} />
        ) : (
          <RegisterForm
            meter={meter}
            timeZone={timeZone}
            draft={draft}
            onChange={(change) => setDraft({ ...draft, ...change })}
            judged={judged}
            isInDoubt={isInDoubt}
            wantsNote={wantsNote}
            isEmptyAsked={asks && draft.typed === ''}
            problem={problem}
            onRetry={() => void onSave()}
          />
        ),
      )}
    </PhoneFrame>
  );
}
