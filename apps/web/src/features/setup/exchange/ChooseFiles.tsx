import { useId, useRef } from 'react';
import { useIntl } from 'react-intl';
import { Button, type ButtonKind } from '../../../ui/forms/Button.js';

interface Props {
  readonly onFiles: (files: readonly File[]) => void;
  readonly isBusy: boolean;
  readonly kind?: ButtonKind;
  /** What the files hold, for those who cannot see the row the button stands in. */
  readonly of?: string;
}

export const FILE_KINDS = '.csv,.tsv,.txt,.xlsx,.zip,.xml';

/** Opens the device's own picker. */
export function ChooseFiles({ onFiles, isBusy, kind = 'usual', of }: Props) {
  const intl = useIntl();
  const id = useId();
  const box = useRef<HTMLInputElement>(null);
  const name = of ? intl.formatMessage({ id: 'setup.choose.of' }, { of }) : intl.formatMessage({ id: 'setup.choose' });
  return (
    <>
      <Button kind={kind} isBusy={isBusy} onClick={() => box.current?.click()} {...(of ? { 'aria-label': name } : {})}>
        {intl.formatMessage({ id: 'setup.choose' })}
      </Button>
      <input
        ref={box}
        id={id}
        type="file"
        multiple
        accept={FILE_KINDS}
        hidden
        aria-label={name}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          // The same file, mended, may be chosen again.
          event.target.value = '';
        }}
      />
    </>
  );
}
