import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DoubtOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { useMasked } from '../../../page/use-masked.js';
import type { Names } from '../../../says/names.js';
import { gatheredNotes } from '../../../says/note-sentence.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { GapDoubt } from './GapDoubt.js';

const doubtOfAccount = graphql(`
  fragment DoubtOfAccount on MonthAccount {
    id
    computedAt
    pricePerLitre
    aboveNeed {
      litres
      sdLitres
      inputs {
        input
        subjectId
        share
      }
    }
    unexplainedGap {
      litres
      sdLitres
      inputs {
        input
        subjectId
        share
      }
    }
    settingsGap {
      litres
      sdLitres
      inputs {
        input
        subjectId
        share
      }
    }
    landscapeGap {
      litres
      sdLitres
      inputs {
        input
        subjectId
        share
      }
    }
    notes {
      code
      details
    }
  }
`);

interface Props {
  readonly account: FragmentType<DoubtOfAccountFragment> | null;
  readonly names: Names;
}

/** What each gap's doubt comes from, and so what is worth measuring; and what the account stands on. */
export function DoubtSection({ account, names }: Props) {
  return account && <KnownDoubt account={account} names={names} />;
}

/** The plain question first, then the gaps from the meter down. */
const GAPS = ['aboveNeed', 'unexplainedGap', 'settingsGap', 'landscapeGap'] as const;

const GAP_NAMES: Readonly<Record<(typeof GAPS)[number], MessageId>> = {
  aboveNeed: 'property.surer.aboveNeed',
  unexplainedGap: 'property.why.unexplainedGap',
  settingsGap: 'property.why.settingsGap',
  landscapeGap: 'property.why.landscape',
};

/** Water below need is told as such, by how much it is. */
function worded(key: (typeof GAPS)[number], gap: DoubtOfAccountFragment['aboveNeed']) {
  const { litres } = gap;
  if (key !== 'aboveNeed' || typeof litres !== 'number' || litres >= 0) return { gap, words: GAP_NAMES[key] };
  return { gap: { ...gap, litres: -litres }, words: 'property.surer.belowNeed' as const };
}

function KnownDoubt({ account: masked, names }: { readonly account: FragmentType<DoubtOfAccountFragment>; readonly names: Names }) {
  const intl = useIntl();
  const { note } = useSays(names);
  const account = useMasked(doubtOfAccount, masked);
  const told = gatheredNotes(account.notes);
  return (
    <Section id="surer" heading={intl.formatMessage({ id: 'property.surer' })} note={<FormattedMessage id="property.surer.note" />}>
      <div className="evid">
        {GAPS.map((key) => {
          const { gap, words } = worded(key, account[key]);
          return <GapDoubt key={key} gap={gap} name={intl.formatMessage({ id: words })} names={names} />;
        })}
      </div>
      {told.length > 0 && (
        <div>
          <h3>
            <FormattedMessage id="property.notes" />
          </h3>
          <ul className="notes">
            {told.map((each) => (
              <li key={JSON.stringify(each)}>{note(each)}</li>
            ))}
          </ul>
        </div>
      )}
    </Section>
  );
}

export { doubtOfAccount };
