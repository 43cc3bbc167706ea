import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { MeterToReadFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import { SentLine } from '../../device/SentLine.js';
import { useDraft } from '../../../../offline/use-draft.js';
import type { StepProps } from '../step-props.js';
import { namedAs } from '../named.js';
import { KeptReading } from './KeptReading.js';
import { ReadingActions } from './ReadingActions.js';
import { RegisterForm } from './RegisterForm.js';
import { isDoubtful, standingReadings, useJudgement } from './use-judgement.js';
import { useReading } from './use-reading.js';

export const meterToRead = graphql(`
  fragment MeterToRead on Meter {
    id
    name
    kind
    water
    unit
    multiplier
    digits
    installedOn
    firstRegister
    resolution
    readings(first: 60) {
      id
      readAt
      register
      replacedById
    }
  }
`);

interface Props extends Pick<StepProps, 'frame' | 'now' | 'visit'> {
  readonly meter: FragmentType<MeterToReadFragment>;
  readonly stopId: string;
  readonly timeZone: string;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly switcher: (content: ReactNode) => ReactNode;
}

/** One meter: what it showed last, the register typed large, and Save, which always works. */
export function MeterReading({ meter: masked, stopId, timeZone, frame, now, visit, next, switcher }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const meter = useMasked(meterToRead, masked);
  const draftName = `reading.${stopId}.${meter.id}`;
  const [draft, setDraft, clearDraft] = useDraft(draftName, { typed: '', note: '' });
  const [wantsNote, setWantsNote] = useState(false);
  const [asks, setAsks] = useState(false);
  const { save, kept, again, replacesId } = useReading({ meter, stopId, draft: draftName, now });
  const judged = useJudgement(meter, { typed: draft.typed, replacesId }, now);
  const isInDoubt = judged !== null && isDoubtful(judged.judgement);
  const onSave = async (): Promise<void> => {
    setAsks(draft.typed === '');
    if (draft.typed === '') return;
    void visit.begin();
    if (await save(Number(draft.typed), draft.note.trim() || null)) clearDraft();
  };
  const actions = (
    <ReadingActions
      isKept={kept !== null}
      isInDoubt={isInDoubt}
      next={next}
      onAgain={again}
      onNote={() => setWantsNote(true)}
      onSave={() => void onSave()}
    />
  );
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
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
            last={standingReadings(meter.readings, replacesId)[0] ?? null}
            timeZone={timeZone}
            draft={draft}
            onChange={(change) => setDraft({ ...draft, ...change })}
            judged={judged}
            isInDoubt={isInDoubt}
            wantsNote={wantsNote}
            isEmptyAsked={asks && draft.typed === ''}
          />
        ),
      )}
      <p className="after">
        <PhotoButton begin={visit.begin} kind="meter" of={meter.id} />
      </p>
    </PhoneFrame>
  );
}
