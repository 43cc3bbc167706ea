import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { FindingDetailQuery } from '../../graphql/__generated__/graphql.js';
import { Fetched } from '../../page/Fetched.js';
import { mayDo, useViewer } from '../../session/viewer.js';
import { EmptyState } from '../../ui/states/States.js';
import { DecideBar } from './decide/DecideBar.js';
import { DecideDialog } from './decide/DecideDialog.js';
import { type Deed, useDecideKeys } from './decide/use-decide-keys.js';
import { FindingArticle } from './evidence/FindingArticle.js';

export const findingDetailDocument = graphql(`
  query FindingDetail($id: ID!) {
    finding(id: $id) {
      id
      ...FindingOfArticle
      ...FindingToDecide
    }
  }
`);

interface Props {
  readonly id: string;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  /** After a decision the next one is wanted. */
  readonly onDecided: () => void;
}

/** One finding with its evidence, and what can be decided of it. */
export function FindingWithDeeds({ id, crews, onDecided }: Props) {
  const query = useQuery(findingDetailDocument, { variables: { id }, fetchPolicy: 'cache-and-network' });
  return <Fetched query={query}>{({ finding }) => <OneFinding finding={finding} crews={crews} onDecided={onDecided} />}</Fetched>;
}

interface OneProps extends Omit<Props, 'id'> {
  readonly finding: FindingDetailQuery['finding'];
}

function OneFinding({ finding, crews, onDecided }: OneProps) {
  const intl = useIntl();
  const mayDecide = mayDo(useViewer(), 'decide findings');
  const [deed, setDeed] = useState<Deed | null>(null);
  useDecideKeys(setDeed, mayDecide);
  if (!finding)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'findings.gone' })}>{intl.formatMessage({ id: 'findings.gone.how' })}</EmptyState>
    );
  return (
    <>
      <FindingArticle finding={finding}>{mayDecide && <DecideBar finding={finding} onChoose={setDeed} />}</FindingArticle>
      {deed && (
        <DecideDialog
          deed={deed}
          finding={finding}
          crews={crews}
          mayDecide={mayDecide}
          onClose={() => setDeed(null)}
          onDone={() => {
            setDeed(null);
            onDecided();
          }}
        />
      )}
    </>
  );
}
