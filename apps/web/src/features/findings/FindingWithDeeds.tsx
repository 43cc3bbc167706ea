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
import { seldomUsefulOf } from './list/seldom-useful.js';

export const findingDetailDocument = graphql(`
  query FindingDetail($id: ID!) {
    finding(id: $id) {
      id
      kind
      ...FindingOfArticle
      ...FindingToDecide
    }
    findingPrecision {
      kind
      isSeldomUseful
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
  return (
    <Fetched query={query}>
      {({ finding, findingPrecision }) => (
        <OneFinding finding={finding} seldomUseful={seldomUsefulOf(findingPrecision)} crews={crews} onDecided={onDecided} />
      )}
    </Fetched>
  );
}

interface OneProps extends Omit<Props, 'id'> {
  readonly finding: FindingDetailQuery['finding'];
  readonly seldomUseful: ReadonlySet<string>;
}

function OneFinding({ finding, seldomUseful, crews, onDecided }: OneProps) {
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
      <FindingArticle finding={finding} isSeldomUseful={seldomUseful.has(finding.kind)}>
        {mayDecide && <DecideBar finding={finding} onChoose={setDeed} />}
      </FindingArticle>
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
