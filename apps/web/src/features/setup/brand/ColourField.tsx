import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { isPale, OWN_COLOUR } from './brand-draft.js';

interface Props {
  /** #rrggbb, or '' for the report's own */
  readonly colour: string;
  readonly onChange: (colour: string) => void;
}

/** The colour of lines and name, and the way back to the report's own. */
export function ColourField({ colour, onChange }: Props) {
  const intl = useIntl();
  return (
    <div className="brand-colour">
      <TextField
        label={intl.formatMessage({ id: 'setup.brand.colour' })}
        hint={intl.formatMessage({ id: 'setup.brand.colour.hint' })}
        isOptional
        type="color"
        value={colour || OWN_COLOUR}
        onChange={onChange}
        problem={isPale(colour) ? intl.formatMessage({ id: 'setup.brand.pale' }) : null}
      />
      {colour && (
        <Button kind="plain" onClick={() => onChange('')}>
          <FormattedMessage id="setup.brand.colour.own" />
        </Button>
      )}
    </div>
  );
}
