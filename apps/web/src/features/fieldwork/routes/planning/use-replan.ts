import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { useUndoPlan } from './use-undo-plan.js';

const replanDocument = graphql(`
  mutation ReplanDay($crewId: ID!) {
    replanDay(crewId: $crewId) {
      id
      moved
      unplaced
    }
  }
`);

/** Plans what is left of a crew's day today anew, from now on, and says so, with the way back. */
export function useReplan() {
  const intl = useIntl();
  const toast = useToast();
  const replan = useDeed(replanDocument, { refetch: ['MonthPlan'] });
  const undo = useUndoPlan();
  const run = async (crewId: string): Promise<void> => {
    const { replanDay: made } = (await replan.run({ crewId })) ?? {};
    if (made)
      toast({
        words: intl.formatMessage({ id: 'monthPlan.replanned' }, made),
        ...(made.moved > 0 && { onUndo: () => void undo.run(made.id) }),
      });
  };
  return { run, isBusy: replan.isBusy || undo.isBusy, problem: replan.problem ?? undo.problem };
}
