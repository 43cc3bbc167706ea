import type { FragmentType } from '@apollo/client';
import { useMemo } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
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
import { waterOf } from '../headline/water-of.js';
import { SeldomUseful } from '../list/SeldomUseful.js';
import { isTooLittle } from '../list/water-of-kind.js';

const findingOfWeek = graphql(`
  fragment FindingOfWeek on Finding {
    id
    kind
    money
    litres
    fromOn
    untilOn
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

const isPriced = (money: number | null | undefined): boolean => typeof money === 'number' && money > 0;

interface Props {
  readonly name: string;
  readonly findings: readonly (FragmentType<FindingOfWeekFragment> & { readonly id: string; readonly kind: string })[];
  /** Kinds that were seldom worth a look here. */
  readonly seldomUseful: ReadonlySet<string>;
}

/** Findings of a week under each other: where, what was seen, its water and money with the time they are of. */
export function FindingsOfWeek({ name, findings, seldomUseful }: Props) {
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
        <FindingOfWeek key={finding.id} finding={finding} isSeldomUseful={seldomUseful.has(finding.kind)} />
      ))}
    </Table>
  );
}

interface OneProps {
  readonly finding: FragmentType<FindingOfWeekFragment>;
  readonly isSeldomUseful: boolean;
}

function FindingOfWeek({ finding, isSeldomUseful }: OneProps) {
  const found = useMasked(findingOfWeek, finding);
  const { id, kind, money, says: told, property } = found;
  const intl = useIntl();
  const formats = useFormats();
  const names = useMemo(() => namesOf(property), [property]);
  const says = useSays(names);
  return (
    <tr>
      <td>
        <Link to={paths.finding(id)}>
          <b>{sentenceCase(says.word('kind', kind))}</b>
        </Link>{' '}
        <span className="soft">{property.name}</span>
        {isSeldomUseful && <SeldomUseful />}
        <br />
        {says.finding({ kind, says: told })}
        {isPriced(money) && <span className="soft xs"> {sentenceCase(waterOf({ intl, formats, names }, found))}.</span>}
      </td>
      <Num>{isTooLittle(kind) ? formats.money(null) : formats.money(money)}</Num>
    </tr>
  );
}
