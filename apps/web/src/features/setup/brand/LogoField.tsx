import { type ChangeEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { Field } from '../../../ui/forms/Field.js';

interface Props {
  /** a data address of a PNG or JPEG */
  readonly logo: string | null;
  readonly onChange: (logo: string | null) => void;
}

const MOST_BYTES = 300_000;
const KINDS = ['image/png', 'image/jpeg'];

const readAsAddress = (file: File): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error('not read'));
    reader.readAsDataURL(file);
  });

/** A picture from the person's own files; what is no picture, or too large, is said and not taken. */
export function LogoField({ logo, onChange }: Props) {
  const intl = useIntl();
  const [problem, setProblem] = useState<string | null>(null);
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = target.files?.[0];
    if (!file) return;
    const isGood = KINDS.includes(file.type) && file.size <= MOST_BYTES;
    const read = isGood ? await readAsAddress(file).catch(() => null) : null;
    setProblem(read === null ? intl.formatMessage({ id: 'setup.brand.logo.wrong' }, { name: file.name }) : null);
    if (read !== null) onChange(read);
    target.value = '';
  };
  return (
    <>
      <Field
        label={intl.formatMessage({ id: 'setup.brand.logo' })}
        hint={intl.formatMessage({ id: 'setup.brand.logo.hint' })}
        isOptional
        problem={problem}
      >
        {(control) => <input {...control} type="file" accept={KINDS.join(',')} onChange={(event) => void choose(event)} />}
      </Field>
      {logo && (
        <Button kind="plain" onClick={() => onChange(null)}>
          <FormattedMessage id="setup.brand.logo.away" />
        </Button>
      )}
    </>
  );
}
