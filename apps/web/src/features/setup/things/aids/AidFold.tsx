import { useId, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { messageOf } from '../../../../says/saying.js';
import { Button } from '../../../../ui/forms/Button.js';
import { Select } from '../../../../ui/forms/Select.js';
import { shownValue } from '../fields/draft.js';
import type { Draft, FieldSpec } from '../fields/field-spec.js';
import { labelOf, ThingField } from '../fields/ThingField.js';
import type { FieldAid } from './field-aids.js';
import { workOut } from './work-out.js';

interface Props {
  /** The field that is filled. */
  readonly spec: FieldSpec;
  readonly aids: readonly FieldAid[];
  readonly onTake: (text: string) => void;
}

/** Works out a field's value from what can be counted and read on the ground; folded until somebody wants it. */
export function AidFold({ spec, aids, onTake }: Props) {
  const intl = useIntl();
  const [name, setName] = useState(aids[0]?.name ?? '');
  const aid = aids.find((one) => one.name === name);
  const wordsOf = (one: string): string => messageOf({ intl }, `aid.${one}`) ?? one;
  return (
    <details className="fold aid">
      <summary>
        <FormattedMessage id="aid.open" values={{ label: labelOf(intl, spec.key) }} />
      </summary>
      <div className="form aid-fields">
        {aids.length > 1 && (
          <Select
            label={intl.formatMessage({ id: 'aid.from' })}
            choices={aids.map((one) => ({ value: one.name, words: wordsOf(one.name) }))}
            value={name}
            onChange={setName}
          />
        )}
        {aid && <Aid key={aid.name} aid={aid} spec={spec} onTake={onTake} />}
      </div>
    </details>
  );
}

function Aid({ aid, spec, onTake }: { readonly aid: FieldAid } & Omit<Props, 'aids'>) {
  const intl = useIntl();
  const formats = useFormats();
  const id = useId();
  const [typed, setTyped] = useState<Draft>({});
  const worked = workOut(formats, aid, typed);
  const wrong = 'wrong' in worked ? worked.wrong : null;
  const wrongWords =
    wrong && intl.formatMessage({ id: `setup.wrong.${wrong.why}` }, { label: labelOf(intl, wrong.key), found: wrong.found });
  const heed = messageOf({ intl }, `aid.heed.${aid.name}`);
  const shown = 'value' in worked ? shownValue(formats, spec.kind, worked.value) : '';
  return (
    <>
      {aid.fields.map((field) => (
        <ThingField
          key={field.key}
          id={`${id}-${field.key}`}
          spec={field}
          value={typed[field.key] ?? ''}
          onChange={(value) => setTyped((before) => ({ ...before, [field.key]: value }))}
          problem={wrong?.key === field.key ? wrongWords : null}
          choices={[]}
        />
      ))}
      {heed && <p className="hint">{heed}</p>}
      <p role="status" className="hint">
        {'lacks' in worked && <FormattedMessage id={`aid.lacks.${worked.lacks}`} />}
      </p>
      {shown !== '' && (
        <Button onClick={() => onTake(shown)}>
          <FormattedMessage
            id="aid.take"
            values={{ value: spec.kind.is === 'quantity' ? `${shown} ${formats.unitOf(spec.kind.of)}` : shown }}
          />
        </Button>
      )}
    </>
  );
}
