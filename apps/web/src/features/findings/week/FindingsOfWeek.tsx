import type { FragmentType } from '@apollo/client';
import { useMemo } from 'react';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FindingOfWeekFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useMasked } from '../../../page/use-masked.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { namesOf } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';
import { isTooLittle } from '../list/water-of-kind.js';

const findingOfWeek = graphql(`
  fragment FindingOfWeek on Finding {
    id
    kind
    money
    says {
      code
      details
    }
    property {
      id
      name
      zones {
        id
        name
        station
      }
      meters {
        id
        name
      }
      controllers {
        id
        name
      }
    }
  }
`);

interface Props {
  readonly name: string;
  readonly findings: readonly (FragmentType<FindingOfWeekFragment> & { readonly id: string })[];
}

/** Findings of a week under each other: where, what was seen, and what it costs a month. */
export function FindingsOfWeek({ name, findings }: Props) {
  return (
    <Table
      name={name}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="property.findings.table" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="week.money" />
          </Head>
        </tr>
      }
    >
      {findings.map((finding) => (
        <FindingOfWeek key={finding.id} finding={finding} />
      ))}
    </Table>
  );
}

function FindingOfWeek({ finding }: { readonly finding: FragmentType<FindingOfWeekFragment> }) {
  const { id, kind, money, says: told, property } = useMasked(findingOfWeek, finding);
  const formats = useFormats();
  const says = useSays(useMemo(() => namesOf(property), [property]));
  return (
    <tr>
      <td>
        <Link to={paths.finding(id)}>
          <b>{sentenceCase(says.word('kind', kind))}</b>
        </Link>{' '}
        <span className="soft">{property.name}</span>
        <br />
        {says.finding({ kind, says: told })}
      </td>
      <Num>{isTooLittle(kind) ? formats.money(null) : formats.money(money)}</Num>
    </tr>
  );
}
