import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import { wordOf } from '../../../../says/saying.js';
import { Button } from '../../../../ui/forms/Button.js';
import type { Choice } from '../../../../ui/forms/Select.js';
import { differing, draftOf } from '../fields/draft.js';
import type { Draft, FieldSpec, Thing } from '../fields/field-spec.js';
import { weekdayChoices } from '../fields/weekdays.js';
import type { ThingKind } from './outcome.js';
import { partsOf } from '../fields/parts.js';
import { labelOf } from '../fields/ThingField.js';

/** Somebody else changed the thing since it was opened here. */
export interface Clashed {
  readonly by: string | null;
  readonly at: string | null;
  readonly version: number;
}

interface Props {
  readonly clash: Clashed;
  readonly kind: ThingKind;
  /** The thing as it is now; still as it was until the page has fetched it anew. */
  readonly thing: Thing | null;
  readonly draft: Draft;
  readonly choices: Readonly<Record<string, readonly Choice<string>[]>>;
  readonly onMine: (version: number) => void;
  readonly onTheirs: (thing: Thing) => void;
}

/** Both values beside each other, with their authors, and one press to decide. */
export function Clash({ clash: { by, at, version }, kind, thing, draft, choices, onMine, onTheirs }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const isFresh = thing !== null && thing.version >= version;
  const theirs = draftOf(formats, kind.fields, thing);
  const told = (field: FieldSpec, value: string): string => {
    const { kind: is } = field;
    const offered = is.is === 'weekdays' ? weekdayChoices(intl) : choices[field.key];
    const one = (part: string): string =>
      is.is === 'word' || is.is === 'words'
        ? wordOf(intl, is.family, part)
        : (offered?.find((choice) => choice.value === part)?.words ?? part);
    return partsOf(value).map(one).join(', ') || NOT_KNOWN;
  };
  return (
    <div className="clash" role="alert">
      <p>
        <b>
          <FormattedMessage id="setup.clash" values={{ by: by ?? 'nobody', time: formats.time(at) }} />
        </b>
      </p>
      {isFresh && (
        <>
          <ul>
            {differing(kind.fields, draft, theirs).map((field) => (
              <li key={field.key}>
                <FormattedMessage
                  id="setup.clash.field"
                  values={{
                    label: labelOf(intl, field.key),
                    theirs: told(field, theirs[field.key] ?? ''),
                    mine: told(field, draft[field.key] ?? ''),
                  }}
                />
              </li>
            ))}
          </ul>
          <div className="form-end">
            <Button onClick={() => onMine(thing.version)}>
              <FormattedMessage id="setup.clash.mine" />
            </Button>
            <Button kind="plain" onClick={() => onTheirs(thing)}>
              <FormattedMessage id="setup.clash.theirs" />
            </Button>
          </div>
        </>
      )}
    </div>
  );
}
