import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useRecordName } from '../../../../page/work/use-record-name.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { useUndoPlan } from './use-undo-plan.js';

const replanDocument = graphql(`
  mutation ReplanDay($crewId: ID!, $id: ID!) {
    replanDay(crewId: $crewId, deviceRecordId: $id) {
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
  const { nameOf, forget } = useRecordName();
  const run = async (crewId: string): Promise<void> => {
    const { replanDay: made } = (await replan.run({ crewId, id: nameOf({ crewId }) })) ?? {};
    if (!made) return;
    forget();
    toast({
      words: intl.formatMessage({ id: 'monthPlan.replanned' }, made),
      ...(made.moved > 0 && { onUndo: () => void undo.run(made.id) }),
    });
  };
  return { run, isBusy: replan.isBusy || undo.isBusy, problem: replan.problem ?? undo.problem };
}
