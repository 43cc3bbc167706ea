import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';

const undoPlanDocument = graphql(`
  mutation UndoPlan($id: ID!) {
    undoPlan(id: $id) {
      id
      undoneAt
    }
  }
`);

/** Takes the last planning back, and says so. */
export function useUndoPlan() {
  const intl = useIntl();
  const toast = useToast();
  const undo = useDeed(undoPlanDocument, { refetch: ['MonthPlan'] });
  const run = async (id: string): Promise<void> => {
    if (await undo.run({ id })) toast({ words: intl.formatMessage({ id: 'monthPlan.undone' }) });
  };
  return { run, isBusy: undo.isBusy, problem: undo.problem };
}
