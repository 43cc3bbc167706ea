import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../ui/forms/Button.js';
import { TextField } from '../../ui/forms/Field.js';
import { Select } from '../../ui/forms/Select.js';

/** Who does it, and when; nobody yet has no day. */
export interface CrewAndDay {
  readonly crewId: string | null;
  readonly day: string | null;
}

interface Props {
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly usualDay: string;
  readonly isBusy: boolean;
  readonly onGive: (to: CrewAndDay) => void;
}

const NOBODY = '';

/** A crew and a day for the work, or nobody yet. */
export function GiveWork({ crews, usualDay, isBusy, onGive }: Props) {
  const intl = useIntl();
  const [crewId, setCrewId] = useState(NOBODY);
  const [day, setDay] = useState(usualDay);
  const choices = crews.map(({ id, name }) => ({ value: id, words: name }));
  return (
    <>
      <Select
        label={intl.formatMessage({ id: 'field.crew' })}
        value={crewId}
        choices={[{ value: NOBODY, words: intl.formatMessage({ id: 'ruleChange.nobody' }) }, ...choices]}
        onChange={setCrewId}
      />
      {crewId !== NOBODY && (
        <TextField type="date" label={intl.formatMessage({ id: 'routes.day' })} value={day} onChange={(next) => next && setDay(next)} />
      )}
      <div className="form-end">
        <Button kind="main" isBusy={isBusy} onClick={() => onGive({ crewId: crewId || null, day: crewId ? day : null })}>
          <FormattedMessage id="ruleChange.order" />
        </Button>
      </div>
    </>
  );
}
