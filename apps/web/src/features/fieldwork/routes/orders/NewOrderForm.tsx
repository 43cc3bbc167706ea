import { type FormEvent, useState } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { typedNumber } from '../../../../i18n/numbers.js';
import { useDeed } from '../../../../page/use-deed.js';
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
const EMPTY = { propertyId: '', kind: 'inspect' as (typeof KINDS)[number], what: '', minutes: '', hours: '', rate: '' };
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

/** Where, what kind, what to do; labour where the kind costs. */
export function NewOrderForm({ properties, onClose }: Props) {
  const intl = useIntl();
  const { currency } = useFormats();
  const create = useDeed(createDocument, { refetch: ['Routes'] });
  const { refusal, settle } = useOrderOutcome(intl.formatMessage({ id: 'routes.created' }));
  const [draft, setDraft] = useState(EMPTY);
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const set = (change: Partial<typeof EMPTY>): void => setDraft((before) => ({ ...before, ...change }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = problemsOf(intl, draft);
    setProblems(wrong);
    if (wrong.length > 0) return;
    const hasCost = COSTS.has(draft.kind);
    const answer = await create.run({
      input: {
        propertyId: draft.propertyId,
        kind: draft.kind,
        what: draft.what.trim() || null,
        estimateMinutes: typedNumber(draft.minutes),
        labourHours: hasCost ? typedNumber(draft.hours) : null,
        labourRate: hasCost ? typedNumber(draft.rate) : null,
      },
    });
    if (!answer) return;
    // An order above the limit is kept, and stands among those that wait: the dialog stays open to say so.
    if (settle(answer.createWorkOrder)) onClose();
  };
  const number = (field: (typeof NUMBERS)[number], unit: string) => (
    <TextField
      id={`order-${field}`}
      label={intl.formatMessage({ id: `routes.${field}` })}
      isOptional
      inputMode="decimal"
      unit={unit}
      value={draft[field]}
      onChange={(value) => set({ [field]: value })}
      problem={problems.find((one) => one.field === `order-${field}`)?.words ?? null}
    />
  );
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
        problem={problems.find(({ field }) => field === 'order-propertyId')?.words ?? null}
      />
      <RadioList
        label={intl.formatMessage({ id: 'routes.kind' })}
        value={draft.kind}
        choices={KINDS.map((kind) => ({ value: kind, words: intl.formatMessage({ id: `work.${kind}` }) }))}
        onChange={(kind) => set({ kind })}
      />
      <TextAreaField label={intl.formatMessage({ id: 'routes.what' })} isOptional value={draft.what} onChange={(what) => set({ what })} />
      {number('minutes', intl.formatMessage({ id: 'unit.min' }))}
      {COSTS.has(draft.kind) && (
        <div className="form-row">
          {number('hours', intl.formatMessage({ id: 'unit.h' }))}
          {number('rate', currency)}
        </div>
      )}
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={create.isBusy}>
          <FormattedMessage id="routes.create" />
        </Button>
      </div>
    </form>
  );
}
