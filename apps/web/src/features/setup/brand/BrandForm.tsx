import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { ErrorState } from '../../../ui/states/States.js';
import { HeadOfReport } from './HeadOfReport.js';
import { LogoField } from './LogoField.js';
import { type Brand, type BrandDraft, draftOf, inputOf, isPale, OWN_COLOUR } from './brand-draft.js';
import { ColourField } from './ColourField.js';

const changeBrandDocument = graphql(`
  mutation ChangeReportBrand($input: ReportBrandInput!) {
    changeReportBrand(input: $input) {
      version
    }
  }
`);

interface Props {
  readonly brand: Brand;
  readonly organizationName: string;
  readonly onSaved: () => void;
}

/** Name, colour, logo and address, beside the head of a report as it will be. */
export function BrandForm({ brand, organizationName, onSaved }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const [draft, setDraft] = useState(() => draftOf(brand));
  const change = useDeed(changeBrandDocument);
  const set = (next: Partial<BrandDraft>): void => setDraft((before) => ({ ...before, ...next }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (isPale(draft.colour) || !(await change.run({ input: inputOf(draft, brand) }))) return;
    toast({ words: intl.formatMessage({ id: 'setup.kept' }) });
    onSaved();
  };
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      {change.problem ? <ErrorState problem={change.problem} /> : null}
      <TextField
        label={intl.formatMessage({ id: 'setup.brand.name' })}
        hint={intl.formatMessage({ id: 'setup.brand.name.hint' }, { name: organizationName })}
        isOptional
        value={draft.name}
        onChange={(name) => set({ name })}
      />
      <TextField
        label={intl.formatMessage({ id: 'setup.brand.contact' })}
        hint={intl.formatMessage({ id: 'setup.brand.contact.hint' })}
        isOptional
        value={draft.contact}
        onChange={(contact) => set({ contact })}
      />
      <ColourField colour={draft.colour} onChange={(colour) => set({ colour })} />
      <LogoField logo={draft.logo} onChange={(logo) => set({ logo })} />
      <HeadOfReport {...draft} name={draft.name || organizationName} colour={draft.colour || OWN_COLOUR} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={change.isBusy}>
          <FormattedMessage id="setup.save" />
        </Button>
      </div>
    </form>
  );
}
