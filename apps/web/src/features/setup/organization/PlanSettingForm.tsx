import { useQuery } from '@apollo/client/react';
import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../../ui/forms/ProblemList.js';
import { Section } from '../../../ui/frame/Section.js';
import { ErrorState } from '../../../ui/states/States.js';
import { judgePlanSetting, type KeptPlanSetting, type PlanSettingDraft, planSettingDraft } from './judge-plan-setting.js';

const planSettingDocument = graphql(`
  query SetupPlanSetting {
    planSetting {
      version
      waterFrom
      waterUntil
      thirst
      waste
      keyPress
      watering
    }
  }
`);

const changeDocument = graphql(`
  mutation ChangePlanSetting($version: Int!, $input: PlanSettingInput!) {
    changePlanSetting(version: $version, input: $input) {
      version
    }
  }
`);

/** What programs are planned by: the hours for watering, and what thirst, waste and key presses are worth. */
export function PlanSettingForm() {
  const intl = useIntl();
  const query = useQuery(planSettingDocument, { fetchPolicy: 'no-cache' });
  return (
    <Section heading={intl.formatMessage({ id: 'setup.plans.title' })} note={<FormattedMessage id="setup.plans.note" />}>
      <Fetched query={query}>
        {({ planSetting }) => <Fields key={planSetting.version} kept={planSetting} onSaved={() => void query.refetch()} />}
      </Fetched>
    </Section>
  );
}

interface Props {
  readonly kept: KeptPlanSetting;
  readonly onSaved: () => void;
}

function Fields({ kept, onSaved }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const toast = useToast();
  const change = useDeed(changeDocument);
  const [draft, setDraft] = useState(() => planSettingDraft(formats, kept));
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const { input, problems: wrong } = judgePlanSetting(intl, formats, draft, kept);
    setProblems(wrong);
    if (!input || !(await change.run({ version: kept.version, input }))) return;
    toast({ words: intl.formatMessage({ id: 'setup.kept' }) });
    onSaved();
  };
  const field = (key: keyof PlanSettingDraft) => ({
    id: `plan-${key}`,
    label: intl.formatMessage({ id: `setup.plans.${key}` }),
    value: draft[key],
    onChange: (value: string) => setDraft((before) => ({ ...before, [key]: value })),
    problem: problems.find((one) => one.field === `plan-${key}`)?.words ?? null,
  });
  const volume = { unit: formats.unitOf('volume'), inputMode: 'decimal' as const };
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      <ProblemList problems={problems} />
      {change.problem ? <ErrorState problem={change.problem} onRetry={onSaved} /> : null}
      <TextField {...field('waterFrom')} type="time" />
      <TextField {...field('waterUntil')} type="time" />
      <TextField {...field('thirst')} inputMode="decimal" hint={intl.formatMessage({ id: 'setup.plans.thirst.how' })} />
      <TextField {...field('waste')} inputMode="decimal" />
      <TextField {...field('keyPress')} {...volume} hint={intl.formatMessage({ id: 'setup.plans.keyPress.how' })} />
      <TextField {...field('watering')} {...volume} hint={intl.formatMessage({ id: 'setup.plans.watering.how' })} />
      <div className="form-end">
        <Button type="submit" isBusy={change.isBusy}>
          <FormattedMessage id="setup.plans.save" />
        </Button>
      </div>
    </form>
  );
}
