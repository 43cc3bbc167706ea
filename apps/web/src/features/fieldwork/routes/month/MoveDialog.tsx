import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { Checkbox, Select } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import type { CarriedTo } from './board.js';

interface Props {
  /** What is carried; null while the dialog is closed. */
  readonly name: string | null;
  /** Where it stands; for something without a day, where it might go. */
  readonly usual: CarriedTo | null;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly problem: unknown;
  readonly isBusy: boolean;
  readonly onClose: () => void;
  readonly onSend: (to: CarriedTo) => Promise<void>;
}

/** Crew, day and place in the order, chosen without dragging. */
export function MoveDialog({ name, usual, onClose, ...form }: Props) {
  const intl = useIntl();
  return (
    <Dialog isOpen={name !== null} heading={intl.formatMessage({ id: 'monthPlan.moveTitle' }, { name: name ?? '' })} onClose={onClose}>
      {name !== null && usual && <MoveForm key={`${name} ${usual.day}`} usual={usual} {...form} />}
    </Dialog>
  );
}

function MoveForm({ usual, crews, problem, isBusy, onSend }: Omit<Props, 'name' | 'onClose' | 'usual'> & { readonly usual: CarriedTo }) {
  const intl = useIntl();
  const [to, setTo] = useState<CarriedTo>({ ...usual, locked: true });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void onSend(to);
  };
  return (
    <form className="form" onSubmit={submit}>
      {problem ? <ErrorState problem={problem} /> : null}
      <Select
        label={intl.formatMessage({ id: 'field.crew' })}
        value={to.crewId}
        choices={crews.map(({ id: value, name: words }) => ({ value, words }))}
        onChange={(crewId) => setTo({ ...to, crewId })}
      />
      <TextField
        type="date"
        label={intl.formatMessage({ id: 'routes.day' })}
        value={to.day}
        onChange={(day) => day && setTo({ ...to, day })}
      />
      <TextField
        type="number"
        label={intl.formatMessage({ id: 'monthPlan.position' })}
        value={String(to.position)}
        onChange={(text) => Number(text) >= 1 && setTo({ ...to, position: Math.floor(Number(text)) })}
      />
      <Checkbox
        label={intl.formatMessage({ id: 'monthPlan.lock' })}
        hint={intl.formatMessage({ id: 'monthPlan.lockHint' })}
        isChecked={to.locked}
        onChange={(locked) => setTo({ ...to, locked })}
      />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={isBusy}>
          <FormattedMessage id="monthPlan.move" />
        </Button>
      </div>
    </form>
  );
}
