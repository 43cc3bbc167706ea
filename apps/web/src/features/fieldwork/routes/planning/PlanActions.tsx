import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { LatestPlanFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useRecordName } from '../../../../page/work/use-record-name.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { Button } from '../../../../ui/forms/Button.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { monthsAfter } from '../month-urls.js';
import { useUndoPlan } from './use-undo-plan.js';

export const latestPlan = graphql(`
  fragment LatestPlan on PlanRun {
    id
    undoneAt
  }
`);

const planMonthDocument = graphql(`
  mutation PlanMonth($month: Month!, $id: ID!) {
    planMonth(month: $month, deviceRecordId: $id) {
      id
      moved
      unplaced
    }
  }
`);

interface Props {
  readonly month: string;
  readonly latest: FragmentType<LatestPlanFragment> | null;
  readonly onMonth: (month: string) => void;
  readonly onSeason: () => void;
}

/** The month before and after; plan, and take the last plan back. */
export function PlanActions({ month, latest, onMonth, onSeason }: Props) {
  const intl = useIntl();
  const { month: inWords } = useFormats();
  const toast = useToast();
  const plan = useDeed(planMonthDocument, { refetch: ['MonthPlan'] });
  const undo = useUndoPlan();
  const { nameOf, forget } = useRecordName();
  const make = async (): Promise<void> => {
    const { planMonth: made } = (await plan.run({ month, id: nameOf({ month }) })) ?? {};
    if (!made) return;
    forget();
    toast({ words: intl.formatMessage({ id: 'monthPlan.made' }, made), ...(made.moved > 0 && { onUndo: () => void undo.run(made.id) }) });
  };
  const problem = plan.problem ?? undo.problem;
  return (
    <>
      {[-1, 1].map((step) => (
        <Button key={step} kind="plain" onClick={() => onMonth(monthsAfter(month, step))}>
          {inWords(monthsAfter(month, step))}
        </Button>
      ))}
      <Button onClick={onSeason}>
        <FormattedMessage id="season.open" />
      </Button>
      {latest && <TakeBack plan={latest} isBusy={undo.isBusy} onTakeBack={(id) => void undo.run(id)} />}
      <Button kind="main" isBusy={plan.isBusy} onClick={() => void make()}>
        <FormattedMessage id={plan.isBusy ? 'monthPlan.making' : 'monthPlan.make'} />
      </Button>
      {problem ? <ErrorState problem={problem} /> : null}
    </>
  );
}

interface TakeBackProps {
  readonly plan: FragmentType<LatestPlanFragment>;
  readonly isBusy: boolean;
  readonly onTakeBack: (id: string) => void;
}

function TakeBack({ plan, isBusy, onTakeBack }: TakeBackProps) {
  const { id, undoneAt } = useMasked(latestPlan, plan);
  if (undoneAt) return null;
  return (
    <Button isBusy={isBusy} onClick={() => onTakeBack(id)}>
      <FormattedMessage id="monthPlan.undo" />
    </Button>
  );
}
