import type { FormEvent } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import type { Names } from '../../../../says/names.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { useSays } from '../../../../says/use-says.js';
import { useViewer } from '../../../../session/viewer.js';
import { TextAreaField, TextField } from '../../../../ui/forms/Field.js';
import { RadioList, Select } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { ChangedNote } from '../ChangedNote.js';
import { OfferToEnterList } from '../../offers/OfferToEnterList.js';
import type { Wished } from '../../offers/offer-choices.js';
import { WORK_KINDS, type WorkKind } from './suggested-work.js';
import type { Accept } from './use-accept.js';

export interface AcceptDraft {
  readonly kind: WorkKind;
  readonly what: string;
  readonly crewId: string;
  readonly day: string;
  /** null where nobody has chosen: the first of the offers */
  readonly wished: Wished | null;
}

export interface AcceptProblems {
  readonly what?: string;
  readonly crew?: string;
  readonly day?: string;
}

interface Props {
  readonly id: string;
  readonly draft: AcceptDraft;
  readonly problems: AcceptProblems;
  readonly accept: Accept;
  readonly controllerId: string | null;
  readonly names: Names;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly onChange: (change: Partial<AcceptDraft>) => void;
  readonly onSubmit: (event: FormEvent) => void;
}

export const NOBODY = '';

/** The kind of work, what to do, and crew and day where they are known already. */
export function AcceptForm({ id, draft, problems, accept, controllerId, names, crews, onChange, onSubmit }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const { today } = useViewer().organization;
  const choices = [
    { value: NOBODY, words: intl.formatMessage({ id: 'accept.crew.none' }) },
    ...crews.map((crew) => ({ value: crew.id, words: crew.name })),
  ];
  return (
    <form id={id} className="form" onSubmit={onSubmit} noValidate>
      {accept.problem ? <ErrorState problem={accept.problem} /> : null}
      <ChangedNote changed={accept.changed} />
      <RadioList
        label={intl.formatMessage({ id: 'accept.kind' })}
        value={draft.kind}
        choices={WORK_KINDS.map((value) => ({ value, words: sentenceCase(word('work', value)) }))}
        onChange={(kind) => onChange({ kind })}
      />
      {draft.kind === 'adjust' && controllerId && (
        <OfferToEnterList
          controllerId={controllerId}
          month={monthToEnter(draft, today)}
          names={names}
          wished={draft.wished}
          onChange={(wished) => onChange({ wished })}
        />
      )}
      <TextAreaField
        label={intl.formatMessage({ id: 'accept.what' })}
        hint={<FormattedMessage id="accept.what.hint" />}
        value={draft.what}
        onChange={(what) => onChange({ what })}
        problem={problems.what}
      />
      <div className="form-row">
        <Select
          label={intl.formatMessage({ id: 'accept.crew' })}
          value={draft.crewId}
          choices={choices}
          onChange={(crewId) => onChange({ crewId })}
          problem={problems.crew ?? null}
        />
        <TextField
          type="date"
          min={today}
          label={intl.formatMessage({ id: 'accept.day' })}
          isOptional
          value={draft.day}
          onChange={(day) => onChange({ day })}
          problem={problems.day}
        />
      </div>
    </form>
  );
}

/** The month of the day on which the crew comes, else the one that is under way. */
export const monthToEnter = ({ day }: AcceptDraft, today: string): string => (day > today ? day : today).slice(0, 7);

/** Work has words; a crew has a day and a day has a crew. */
export function acceptProblems(intl: IntlShape, { what, crewId, day }: AcceptDraft, today: string): AcceptProblems {
  return {
    ...(what.trim() ? {} : { what: intl.formatMessage({ id: 'accept.what.missing' }) }),
    ...(day && !crewId ? { crew: intl.formatMessage({ id: 'accept.crew.missing' }) } : {}),
    ...(crewId && !day ? { day: intl.formatMessage({ id: 'accept.day.missing' }) } : {}),
    ...(day && day < today ? { day: intl.formatMessage({ id: 'accept.day.past' }) } : {}),
  };
}
