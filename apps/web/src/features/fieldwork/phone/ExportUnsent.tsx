import { FormattedMessage } from 'react-intl';
import { unsentFile } from '../../../offline/unsent-file.js';
import { usePhone } from '../../../offline/PhoneProvider.js';
import { Button } from '../../../ui/forms/Button.js';

/** Saves what was not sent as a file, so that it leaves the phone in somebody's hands. */
export function ExportUnsent({ onSaved }: { readonly onSaved?: () => void }) {
  const phone = usePhone();
  const save = async (): Promise<void> => {
    const address = URL.createObjectURL(await unsentFile(phone));
    const link = document.createElement('a');
    link.href = address;
    link.download = 'rillbook-unsent.json';
    link.click();
    URL.revokeObjectURL(address);
    onSaved?.();
  };
  return (
    <p className="after">
      <Button onClick={() => void save()}>
        <FormattedMessage id="field.phone.export" />
      </Button>
    </p>
  );
}
