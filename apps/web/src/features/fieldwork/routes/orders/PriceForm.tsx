import type { FragmentType } from '@apollo/client';
import { type FormEvent, useState } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { OrderToPriceFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../../../ui/forms/ProblemList.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { draftOf, EMPTY_PART, type PartDraft, type PriceDraft, pricedInput, wrongOf } from './price-draft.js';

export const orderToPrice = graphql(`
  fragment OrderToPrice on WorkOrder {
    id
    version
    kind
    what
    controllerId
    meterId
    zoneId
    estimateMinutes
    notBefore
    dueOn
    skills
    labourHours
    labourRate
    parts {
      name
      count
      price
    }
    property {
      id
    }
  }
`);
const priceDocument = graphql(`
  mutation PriceWorkOrder($id: ID!, $version: Int!, $input: WorkOrderInput!) {
    changeWorkOrder(id: $id, version: $version, input: $input) {
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

const problemsOf = (intl: IntlShape, draft: PriceDraft): FormProblem[] =>
  wrongOf(draft).map(({ field, found }) => ({
    field: `price-${field}`,
    words: intl.formatMessage(
      { id: found ? 'routes.noNumber' : field.endsWith('name') ? 'routes.price.noName' : 'routes.price.none' },
      { found },
    ),
  }));

interface Props {
  readonly order: FragmentType<OrderToPriceFragment>;
  readonly onClose: () => void;
}

/** Labour and parts: what the client is asked to agree to. */
export function PriceForm({ order: masked, onClose }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const { currency, time } = useFormats();
  const order = useMasked(orderToPrice, masked);
  const [draft, setDraft] = useState(() => draftOf(order));
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const keep = useDeed(priceDocument, { refetch: ['Routes'] });
  const problemOf = (field: string): string | null => problems.find((one) => one.field === `price-${field}`)?.words ?? null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = problemsOf(intl, draft);
    setProblems(wrong);
    const answer = wrong.length > 0 ? null : await keep.run({ id: order.id, version: order.version, input: pricedInput(order, draft) });
    if (!answer) return;
    const outcome = answer.changeWorkOrder;
    if (outcome.__typename === 'ChangedMeanwhile') {
      const values = { by: outcome.changedBy ?? 'nobody', time: time(outcome.changedAt) };
      setProblems([{ words: intl.formatMessage({ id: 'routes.changed' }, values) }]);
      return;
    }
    const isOpen = outcome.__typename === 'WorkOrder' && outcome.state !== 'waiting for approval';
    toast({ words: intl.formatMessage({ id: isOpen ? 'routes.price.opened' : 'routes.price.kept' }) });
    onClose();
  };
  const labour = (field: 'hours' | 'rate') => (
    <TextField
      id={`price-${field}`}
      label={intl.formatMessage({ id: `routes.${field}` })}
      isOptional
      inputMode="decimal"
      unit={field === 'rate' ? currency : intl.formatMessage({ id: 'unit.h' })}
      value={draft[field]}
      onChange={(value) => setDraft({ ...draft, [field]: value })}
      problem={problemOf(field)}
    />
  );
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      <ProblemList problems={problems} />
      {keep.problem ? <ErrorState problem={keep.problem} /> : null}
      {labour('hours')}
      {labour('rate')}
      <PartFields parts={draft.parts} onChange={(parts) => setDraft({ ...draft, parts })} problemOf={problemOf} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={keep.isBusy}>
          <FormattedMessage id="routes.price.keep" />
        </Button>
      </div>
    </form>
  );
}

interface PartsProps {
  readonly parts: readonly PartDraft[];
  readonly onChange: (parts: readonly PartDraft[]) => void;
  readonly problemOf: (field: string) => string | null;
}

function PartFields({ parts, onChange, problemOf }: PartsProps) {
  const intl = useIntl();
  const { currency } = useFormats();
  const set = (at: number, change: Partial<PartDraft>): void =>
    onChange(parts.map((part, place) => (place === at ? { ...part, ...change } : part)));
  const field = (at: number, name: keyof PartDraft, part: PartDraft) => (
    <TextField
      id={`price-part-${at}-${name}`}
      label={intl.formatMessage({ id: `routes.part.${name}` }, { at: at + 1 })}
      isOptional={name === 'name'}
      {...(name === 'name' ? {} : { inputMode: 'decimal' as const })}
      {...(name === 'price' ? { unit: currency } : {})}
      value={part[name]}
      onChange={(value) => set(at, { [name]: value })}
      problem={problemOf(`part-${at}-${name}`)}
    />
  );
  return (
    <>
      {parts.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and are added at the end only
        <fieldset key={at} className="part-line">
          <legend>
            <FormattedMessage id="routes.part" values={{ at: at + 1 }} />
          </legend>
          {field(at, 'name', part)}
          {field(at, 'count', part)}
          {field(at, 'price', part)}
        </fieldset>
      ))}
      <p>
        <Button kind="plain" onClick={() => onChange([...parts, EMPTY_PART])}>
          <FormattedMessage id="routes.part.add" />
        </Button>
      </p>
    </>
  );
}
