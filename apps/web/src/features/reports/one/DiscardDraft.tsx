import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DiscardedReportFragment } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

export const discardedReport = graphql(`
  fragment DiscardedReport on WaterReport {
    id
    version
  }
`);
const discardDocument = graphql(`
  mutation DiscardDraft($id: ID!, $version: Int!) {
    retireWaterReport(id: $id, version: $version) {
      __typename
    }
  }
`);

interface Props {
  readonly report: FragmentType<DiscardedReportFragment>;
  readonly onDone: () => void;
}

/** Takes a draft away that was made by mistake; said twice, for its note goes with it. */
export function DiscardDraft({ report: masked, onDone }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const { id, version } = useMasked(discardedReport, masked);
  const [asked, setAsked] = useState(false);
  const discard = useDeed(discardDocument, { refetch: ['ReportsPage'] });
  const discardIt = async (): Promise<void> => {
    const answer = await discard.run({ id, version });
    if (!answer) return;
    const isGone = answer.retireWaterReport.__typename === 'WaterReport';
    toast({ words: intl.formatMessage({ id: isGone ? 'reports.discarded' : 'reports.changedMeanwhile' }) });
    if (isGone) onDone();
  };
  return (
    <>
      {asked ? (
        <>
          <FormattedMessage id="reports.discard.sure" />{' '}
          <Button isBusy={discard.isBusy} onClick={() => void discardIt()}>
            <FormattedMessage id="reports.discard.yes" />
          </Button>
          <Button kind="plain" onClick={() => setAsked(false)}>
            <FormattedMessage id="reports.discard.no" />
          </Button>
        </>
      ) : (
        <Button kind="plain" onClick={() => setAsked(true)}>
          <FormattedMessage id="reports.discard" />
        </Button>
      )}
      {discard.problem ? <ErrorState problem={discard.problem} /> : null}
    </>
  );
}
