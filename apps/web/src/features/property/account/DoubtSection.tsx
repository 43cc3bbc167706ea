import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DoubtOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import type { Names } from '../../../says/names.js';
import { gatheredNotes } from '../../../says/note-sentence.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';

const doubtOfAccount = graphql(`
  fragment DoubtOfAccount on MonthAccount {
    id
    computedAt
    pricePerLitre
    uncertainty {
      input
      share
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

/** Where the doubt comes from, and so what is worth measuring; and what the account stands on. */
export function DoubtSection({ account, names }: Props) {
  return account && <KnownDoubt account={account} names={names} />;
}

const LEAST_SHARE = 0.01;

function KnownDoubt({ account, names }: { readonly account: FragmentType<DoubtOfAccountFragment>; readonly names: Names }) {
  const intl = useIntl();
  const formats = useFormats();
  const { word, note } = useSays(names);
  const { uncertainty, notes } = useMasked(doubtOfAccount, account);
  const worth = uncertainty.filter(({ share }) => share >= LEAST_SHARE);
  const told = gatheredNotes(notes);
  return (
    <Section
      heading={intl.formatMessage({ id: 'property.measure' })}
      note={<FormattedMessage id={worth.length > 0 ? 'property.measure.note' : 'property.measure.none'} />}
    >
      <div className="evid">
        {worth.length > 0 && (
          <ol className="shares">
            {worth.map(({ input, share }) => (
              <li key={input}>
                <span className="num">{formats.percent(share)}</span>{' '}
                <span className="share" style={{ inlineSize: `${share * 100}%` }} aria-hidden="true" />
                <span>{word('input', input)}</span>
              </li>
            ))}
          </ol>
        )}
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
      </div>
    </Section>
  );
}

export { doubtOfAccount };
