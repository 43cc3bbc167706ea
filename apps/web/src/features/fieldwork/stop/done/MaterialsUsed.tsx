import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import type { MaterialDraft } from './materials.js';

interface Props {
  readonly materials: readonly MaterialDraft[];
  readonly onChange: (materials: readonly MaterialDraft[]) => void;
}

/** What was used up here, a row each. */
export function MaterialsUsed({ materials, onChange }: Props) {
  const intl = useIntl();
  const change = (at: number, changed: Partial<MaterialDraft>): void =>
    onChange(materials.map((one, place) => (place === at ? { ...one, ...changed } : one)));
  return (
    <div className="stack" role="group" aria-label={intl.formatMessage({ id: 'field.materials' })}>
      {materials.map((material, at) => (
        // A row has no name but its place.
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are only added at the end
        <div key={at} className="material">
          <TextField
            label={intl.formatMessage({ id: 'field.materials.count' }, { number: at + 1 })}
            inputMode="decimal"
            value={material.count}
            onChange={(count) => change(at, { count })}
          />
          <TextField
            label={intl.formatMessage({ id: 'field.materials.name' }, { number: at + 1 })}
            value={material.name}
            onChange={(name) => change(at, { name })}
          />
        </div>
      ))}
      <Button kind="plain" onClick={() => onChange([...materials, { name: '', count: '1' }])}>
        <FormattedMessage id="field.materials.add" />
      </Button>
    </div>
  );
}
