import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { ChangesOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fold } from '../../../page/drawing/Fold.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { changedFields } from './changed-fields.js';

const changesOfProperty = graphql(`
  fragment ChangesOfProperty on Property {
    id
    changes(first: 30) {
      id
      thing
      deed
      before
      after
      by
      at
    }
  }
`);

/** Who changed what, and when; folded, since it is asked for seldom. */
export function ChangesSection({ property }: { readonly property: FragmentType<ChangesOfPropertyFragment> }) {
  const intl = useIntl();
  const { changes } = useMasked(changesOfProperty, property);
  const heading = intl.formatMessage({ id: 'property.changes' });
  if (changes.length === 0) return <Section heading={heading} note={<FormattedMessage id="property.changes.none" />} />;
  return (
    <Section heading={heading}>
      <Fold summary={<FormattedMessage id="property.changes.show" values={{ count: changes.length }} />}>
        <Table
          name={intl.formatMessage({ id: 'property.changes.table' })}
          isTight
          head={
            <tr>
              {(['when', 'who', 'what', 'before', 'after'] as const).map((what) => (
                <Head key={what}>
                  <FormattedMessage id={`property.changes.${what}`} />
                </Head>
              ))}
            </tr>
          }
        >
          {changes.map((change) => (
            <ChangeRow key={change.id} change={change} />
          ))}
        </Table>
      </Fold>
    </Section>
  );
}

function ChangeRow({ change: { thing, deed, before, after, by, at } }: { readonly change: ChangesOfPropertyFragment['changes'][number] }) {
  const { moment } = useFormats();
  const { word } = useSays();
  const fields = deed === 'change' ? changedFields(before, after) : [];
  return (
    <tr>
      <td className="nw">{moment(at)}</td>
      <td>{by ?? <FormattedMessage id="property.changes.somebody" />}</td>
      <td>
        <FormattedMessage id="property.changes.line" values={{ thing: word('thing', thing), deed: word('deed', deed) }} />
      </td>
      <td>{fields.map(({ name, before: was }) => `${name}: ${was}`).join('; ')}</td>
      <td>{fields.map(({ name, after: is }) => `${name}: ${is}`).join('; ')}</td>
    </tr>
  );
}
