import { useQuery } from '@apollo/client/react';
import { useEffect, useRef } from 'react';
import { useIntl } from 'react-intl';
import { useNavigate, useParams } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { FindingsQuery } from '../../graphql/__generated__/graphql.js';
import { Fetched } from '../../page/Fetched.js';
import { useAddress } from '../../page/use-address.js';
import { EmptyState } from '../../ui/states/States.js';
import { FindingWithDeeds } from './FindingWithDeeds.js';
import './findings.css';
import { FindingList } from './list/FindingList.js';
import { inGroups } from './list/in-groups.js';
import { seldomUsefulOf } from './list/seldom-useful.js';
import { findingAddress, findingsAddress, type FindingState } from './urls.js';

export const findingsDocument = graphql(`
  query Findings($state: [String!], $kind: String, $silenced: Boolean) {
    findings(state: $state, kind: $kind, silenced: $silenced) {
      id
      kind
      money
      litres
      ...FindingLine
    }
    crews {
      id
      name
    }
    findingPrecision {
      kind
      isSeldomUseful
    }
  }
`);

/** Findings of a list: what somebody lets wait is not among those to decide. */
function asked(state: FindingState): { readonly state: string[]; readonly silenced?: boolean } {
  switch (state) {
    case 'open':
      return { state: ['open'], silenced: false };
    case 'waiting':
      return { state: ['open', 'in work'], silenced: true };
    default:
      return { state: [state] };
  }
}

/** The list to work through: what was found at the left, its evidence at the right. */
export function FindingsPage() {
  const [place, change] = useAddress(findingsAddress);
  const query = useQuery(findingsDocument, { variables: { ...asked(place.state), kind: place.kind }, fetchPolicy: 'cache-and-network' });
  const shown = { ...query, data: query.data ?? query.previousData };
  return <Fetched query={shown}>{(data) => <Findings data={data} place={place} onChange={change} />}</Fetched>;
}

interface Props {
  readonly data: FindingsQuery;
  readonly place: ReturnType<typeof findingsAddress.read>;
  readonly onChange: (place: Partial<ReturnType<typeof findingsAddress.read>>) => void;
}

function Findings({ data, place, onChange }: Props) {
  const intl = useIntl();
  const navigate = useNavigate();
  const { id } = useParams();
  const groups = inGroups(data.findings, seldomUsefulOf(data.findingPrecision));
  const findings = groups.flatMap((group) => group.findings);
  const chosen = id ?? findings[0]?.id ?? null;
  const at = findings.findIndex((finding) => finding.id === chosen);
  // A dialog that closes gives the focus back to the line of what was just decided: that does not choose it again.
  const decided = useRef<string | null>(null);
  useEffect(() => {
    if (!findings.some((finding) => finding.id === decided.current)) decided.current = null;
  }, [findings]);
  const choose = (next: string): void => {
    if (next !== decided.current) void navigate(findingAddress(next, place), { replace: true });
  };
  const goOn = (): void => {
    decided.current = chosen;
    const next = findings[at + 1] ?? findings[at - 1];
    if (next && at >= 0) choose(next.id);
  };
  const isOpenList = place.state === 'open' && !place.kind;
  return (
    <div className="find">
      <FindingList groups={groups} chosen={chosen} place={place} onChange={onChange} onChoose={choose} />
      {chosen === null ? (
        <EmptyState isPage sentence={intl.formatMessage({ id: isOpenList ? 'findings.empty' : 'findings.empty.other' })}>
          {intl.formatMessage({ id: isOpenList ? 'findings.empty.how' : 'findings.empty.otherHow' })}
        </EmptyState>
      ) : (
        <FindingWithDeeds key={chosen} id={chosen} crews={data.crews} onDecided={goOn} />
      )}
    </div>
  );
}
