import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../../ui/forms/ProblemList.js';
import { RadioList } from '../../../ui/forms/Select.js';
import { ErrorState } from '../../../ui/states/States.js';
import { judgeOrganization, type KeptOrganization, type OrganizationDraft, organizationDraft } from './judge-organization.js';
import { Thresholds } from './Thresholds.js';

const changeOrganizationDocument = graphql(`
  mutation ChangeOrganization($version: Int!, $input: OrganizationInput!) {
    changeOrganization(version: $version, input: $input) {
      id
      version
      name
      language
      units
      leastLitres
      leastMoney
      leastConfidence
    }
  }
`);

interface Props {
  readonly organization: KeptOrganization;
  readonly onSaved: () => void;
}

/** Name, language, units, and the thresholds of a finding. */
export function OrganizationForm({ organization, onSaved }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const toast = useToast();
  const change = useDeed(changeOrganizationDocument, { refetch: ['Viewer'] });
  const [draft, setDraft] = useState(() => organizationDraft(formats, organization));
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const set = (next: Partial<OrganizationDraft>): void => setDraft((before) => ({ ...before, ...next }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const { input, problems: wrong } = judgeOrganization(intl, formats, draft, organization);
    setProblems(wrong);
    if (!input || !(await change.run({ version: organization.version, input }))) return;
    toast({ words: intl.formatMessage({ id: 'setup.kept' }) });
    onSaved();
  };
  const problemOf = (field: string): string | null => problems.find((one) => one.field === field)?.words ?? null;
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      <ProblemList problems={problems} />
      {change.problem ? <ErrorState problem={change.problem} onRetry={onSaved} /> : null}
      <TextField
        id="org-name"
        label={intl.formatMessage({ id: 'identity.first.name' })}
        value={draft.name}
        onChange={(name) => set({ name })}
        problem={problemOf('org-name')}
      />
      <RadioList
        label={intl.formatMessage({ id: 'setup.organization.language' })}
        value={draft.language}
        choices={(['en', 'es'] as const).map((value) => ({ value, words: intl.formatMessage({ id: `language.${value}` }) }))}
        onChange={(language) => set({ language })}
      />
      <RadioList
        label={intl.formatMessage({ id: 'setup.field.units' })}
        value={draft.units}
        choices={(['us', 'metric'] as const).map((value) => ({ value, words: intl.formatMessage({ id: `units.${value}` }) }))}
        onChange={(units) => set({ units })}
      />
      <Thresholds draft={draft} set={set} problemOf={problemOf} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={change.isBusy}>
          <FormattedMessage id="setup.save" />
        </Button>
      </div>
    </form>
  );
}
