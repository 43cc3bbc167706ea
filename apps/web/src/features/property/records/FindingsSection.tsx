import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import type { FindingsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useMasked } from '../../../page/use-masked.js';
import { useVolumeColumn } from '../../../page/use-volume-column.js';
import type { Names } from '../../../says/names.js';
import { endedWords } from '../../../says/saying.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';
import { findingsOfProperty } from './findings-of-property.js';

type Finding = FindingsOfPropertyFragment['findings'][number];

interface Props {
  readonly property: FragmentType<FindingsOfPropertyFragment>;
  readonly names: Names;
}

const ORDER = ['open', 'in work', 'resolved', 'dismissed'];
const place = ({ state }: Finding): number => ORDER.indexOf(state);

/** What was found here, those that wait first, and where each stands. */
export function FindingsSection({ property, names }: Props) {
  const intl = useIntl();
  const { currency } = useFormats();
  const findings = [...useMasked(findingsOfProperty, property).findings].sort(
    (one, other) => place(one) - place(other) || (other.money ?? -1) - (one.money ?? -1),
  );
  const column = useVolumeColumn(Math.max(0, ...findings.map(({ litres }) => litres ?? 0)));
  if (findings.length === 0) return <Section heading={intl.formatMessage({ id: 'property.findings.none' })} />;
  const open = findings.filter(({ state }) => state === 'open' || state === 'in work').length;
  return (
    <Section heading={intl.formatMessage({ id: 'property.findings' }, { open })}>
      <Table
        name={intl.formatMessage({ id: 'property.findings.table' })}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="property.findings.table" />
            </Head>
            <Head isNumber>{column.unit}</Head>
            <Head isNumber>
              <FormattedMessage id="property.findings.money" values={{ currency: currency === 'USD' ? '$' : currency }} />
            </Head>
            <Head>
              <FormattedMessage id="property.findings.where" />
            </Head>
          </tr>
        }
      >
        {findings.map((finding) => (
          <FindingRow key={finding.id} finding={finding} figure={column.figure} names={names} />
        ))}
      </Table>
    </Section>
  );
}

interface RowProps {
  readonly finding: Finding;
  readonly figure: (litres: number | null | undefined) => string;
  readonly names: Names;
}

function FindingRow({ finding, figure, names }: RowProps) {
  const formats = useFormats();
  const says = useSays(names);
  return (
    <tr>
      <td>
        <Link to={paths.finding(finding.id)}>
          <b>{sentenceCase(says.word('kind', finding.kind))}</b>
        </Link>{' '}
        {says.finding(finding)}
        {finding.cameBack > 0 && (
          <span className="clay">
            {' '}
            <FormattedMessage id="findings.cameBack" values={{ count: finding.cameBack }} />
          </span>
        )}
      </td>
      <Num>{figure(finding.litres)}</Num>
      <Num>{formats.number(finding.money)}</Num>
      <td className="where">
        <WhereItStands finding={finding} />
      </td>
    </tr>
  );
}

/** Open with the way to decide, in work with crew and day, or settled with why. */
function WhereItStands({ finding: { id, state, dismissedWhy, resolvedWith, workOrders } }: { readonly finding: Finding }) {
  const intl = useIntl();
  const { day } = useFormats();
  const { word } = useSays();
  const given = workOrders.find((order) => order.crew && order.day && order.state !== 'dropped');
  switch (state) {
    case 'open':
      return (
        <>
          {word('state', state)}{' '}
          <Link to={paths.finding(id)}>
            <FormattedMessage id="property.findings.decide" />
          </Link>
        </>
      );
    case 'in work':
      return given?.crew ? (
        <>
          {word('state', state)}: <FormattedMessage id="property.findings.crew" values={{ crew: given.crew.name, day: day(given.day) }} />
        </>
      ) : (
        <FormattedMessage id="property.findings.noDay" />
      );
    default:
      return [word('state', state), dismissedWhy ?? (resolvedWith && endedWords(intl, resolvedWith))].filter(Boolean).join(': ');
  }
}
