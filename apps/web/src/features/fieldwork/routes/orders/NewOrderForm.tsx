import { type FormEvent, useState } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { typedNumber } from '../../../../i18n/numbers.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useRecordName } from '../../../../page/work/use-record-name.js';
import { Button } from '../../../../ui/forms/Button.js';
import { TextAreaField, TextField } from '../../../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../../../ui/forms/ProblemList.js';
import { RadioList, Select } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { useOrderOutcome } from './use-order-outcome.js';

const createDocument = graphql(`
  mutation CreateWorkOrder($input: WorkOrderInput!) {
    createWorkOrder(input: $input) {
      __typename
      ... on WorkOrder {
        id
        version
        state
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on ApprovalNeeded {
        needed: cost
        limit: notToExceed
      }
    }
  }
`);

const KINDS = ['adjust', 'inspect', 'repair', 'read', 'upgrade', 'plant care'] as const;
/** Kinds that carry labour and parts. */
const COSTS: ReadonlySet<string> = new Set(['repair', 'upgrade', 'plant care']);
const EMPTY = {
  propertyId: '',
  kind: 'inspect' as (typeof KINDS)[number],
  what: '',
  minutes: '',
  hours: '',
  rate: '',
  notBefore: '',
  dueOn: '',
  skills: '',
};
const NUMBERS = ['minutes', 'hours', 'rate'] as const;

function problemsOf(intl: IntlShape, draft: typeof EMPTY): FormProblem[] {
  const bad = NUMBERS.filter((field) => draft[field].trim() !== '' && !((typedNumber(draft[field]) ?? -1) >= 0));
  return [
    ...(draft.propertyId ? [] : [{ field: 'order-propertyId', words: intl.formatMessage({ id: 'routes.noProperty' }) }]),
    ...bad.map((field) => ({ field: `order-${field}`, words: intl.formatMessage({ id: 'routes.noNumber' }, { found: draft[field] }) })),
  ];
}

interface Props {
  readonly properties: readonly { readonly id: string; readonly name: string }[];
  readonly onClose: () => void;
}

const inputOf = ({ propertyId, kind, what, minutes, hours, rate, notBefore, dueOn, skills }: typeof EMPTY) => ({
  propertyId,
  kind,
  what: what.trim() || null,
  estimateMinutes: typedNumber(minutes),
  labourHours: COSTS.has(kind) ? typedNumber(hours) : null,
  labourRate: COSTS.has(kind) ? typedNumber(rate) : null,
  notBefore: notBefore || null,
  dueOn: dueOn || null,
  skills: skills.trim() ? skills.split(',') : null,
});

/** Where, what kind, what to do; labour where the kind costs. */
export function NewOrderForm({ properties, onClose }: Props) {
  const intl = useIntl();
  const create = useDeed(createDocument, { refetch: ['Routes'] });
  const { nameOf } = useRecordName();
  const { refusal, settle } = useOrderOutcome(intl.formatMessage({ id: 'routes.created' }));
  const [draft, setDraft] = useState(EMPTY);
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const set = (change: Partial<typeof EMPTY>): void => setDraft((before) => ({ ...before, ...change }));
  const problemOf = (field: string): string | null => problems.find((one) => one.field === `order-${field}`)?.words ?? null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = problemsOf(intl, draft);
    setProblems(wrong);
    if (wrong.length > 0) return;
    const input = inputOf(draft);
    const answer = await create.run({ input: { deviceRecordId: nameOf(input), ...input } });
    // An order above the limit is kept, and stands among those that wait: the dialog stays open to say so.
    if (answer && settle(answer.createWorkOrder)) onClose();
  };
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      <ProblemList problems={[...problems, ...(refusal ? [{ words: refusal }] : [])]} />
      {create.problem ? <ErrorState problem={create.problem} /> : null}
      <Select
        id="order-propertyId"
        label={intl.formatMessage({ id: 'routes.property' })}
        value={draft.propertyId}
        choices={[
          { value: '', words: intl.formatMessage({ id: 'routes.choose' }) },
          ...properties.map(({ id, name }) => ({ value: id, words: name })),
        ]}
        onChange={(propertyId) => set({ propertyId })}
        problem={problemOf('propertyId')}
      />
      <RadioList
        label={intl.formatMessage({ id: 'routes.kind' })}
        value={draft.kind}
        choices={KINDS.map((kind) => ({ value: kind, words: intl.formatMessage({ id: `work.${kind}` }) }))}
        onChange={(kind) => set({ kind })}
      />
      <TextAreaField label={intl.formatMessage({ id: 'routes.what' })} isOptional value={draft.what} onChange={(what) => set({ what })} />
      {NUMBERS.filter((field) => field === 'minutes' || COSTS.has(draft.kind)).map((field) => (
        <OrderNumber
          key={field}
          field={field}
          value={draft[field]}
          onChange={(value) => set({ [field]: value })}
          problem={problemOf(field)}
        />
      ))}
      <ForThePlan draft={draft} onChange={set} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={create.isBusy}>
          <FormattedMessage id="routes.create" />
        </Button>
      </div>
    </form>
  );
}

interface PlanProps {
  readonly draft: Pick<typeof EMPTY, 'notBefore' | 'dueOn' | 'skills'>;
  readonly onChange: (change: Partial<typeof EMPTY>) => void;
}

/** From when, by when, and by whom: what the month's plan keeps to. */
function ForThePlan({ draft: { notBefore, dueOn, skills }, onChange }: PlanProps) {
  const intl = useIntl();
  return (
    <>
      <TextField
        type="date"
        isOptional
        label={intl.formatMessage({ id: 'routes.notBefore' })}
        value={notBefore}
        onChange={(next) => onChange({ notBefore: next })}
      />
      <TextField
        type="date"
        isOptional
        label={intl.formatMessage({ id: 'routes.dueOn' })}
        value={dueOn}
        onChange={(next) => onChange({ dueOn: next })}
      />
      <TextField
        isOptional
        label={intl.formatMessage({ id: 'routes.skills' })}
        hint={intl.formatMessage({ id: 'routes.skillsHint' })}
        value={skills}
        onChange={(next) => onChange({ skills: next })}
      />
    </>
  );
}

interface NumberProps {
  readonly field: (typeof NUMBERS)[number];
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem: string | null;
}

function OrderNumber({ field, value, onChange, problem }: NumberProps) {
  const intl = useIntl();
  const { currency } = useFormats();
  const unit = field === 'rate' ? currency : intl.formatMessage({ id: field === 'hours' ? 'unit.h' : 'unit.min' });
  return (
    <TextField
      id={`order-${field}`}
      label={intl.formatMessage({ id: `routes.${field}` })}
      isOptional
      inputMode="decimal"
      unit={unit}
      value={value}
      onChange={onChange}
      problem={problem}
    />
  );
}
