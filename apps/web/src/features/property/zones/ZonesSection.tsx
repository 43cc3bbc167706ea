import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { PropertyOfZonesFragment, ZonesOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { useVolumeColumn } from '../../../page/use-volume-column.js';
import type { Names } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { EmptyState } from '../../../ui/states/States.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { type ZoneLabels, type ZoneLine, ZoneRow } from './ZoneRow.js';

const propertyOfZones = graphql(`
  fragment PropertyOfZones on Property {
    id
    zones {
      id
      name
      station
      plants
      method
      unmetered
    }
  }
`);

const zonesOfAccount = graphql(`
  fragment ZonesOfAccount on MonthAccount {
    id
    overLitres
    underLitres
    zones {
      zoneId
      neededLitres
      programmedLitres
      overLitres
      underLitres
      minutes
      estimate {
        code
        details
      }
      reason {
        code
        details
      }
    }
  }
`);

interface Props {
  readonly account: FragmentType<ZonesOfAccountFragment> | null;
  readonly property: FragmentType<PropertyOfZonesFragment>;
  readonly names: Names;
}

/** Need beside programmed, zone by zone; too much and too little apart. */
export function ZonesSection({ account, property: masked, names }: Props) {
  const intl = useIntl();
  const { zones } = useMasked(propertyOfZones, masked);
  if (zones.length === 0)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'property.zones.none' })}>
        {intl.formatMessage({ id: 'property.zones.none.how' })}
      </EmptyState>
    );
  return account && <KnownZones account={account} zones={zones} names={names} />;
}

interface KnownProps {
  readonly account: FragmentType<ZonesOfAccountFragment>;
  readonly zones: PropertyOfZonesFragment['zones'];
  readonly names: Names;
}

function KnownZones({ account: masked, zones, names }: KnownProps) {
  const intl = useIntl();
  const { volume } = useSays(names);
  const account = useMasked(zonesOfAccount, masked);
  const lines: readonly ZoneLine[] = [...zones]
    .sort((one, other) => (one.station ?? Number.POSITIVE_INFINITY) - (other.station ?? Number.POSITIVE_INFINITY))
    .map((zone) => ({ zone, line: account.zones.find(({ zoneId }) => zoneId === zone.id) ?? null }));
  const largest = (key: 'overLitres' | 'underLitres' | 'neededLitres' | 'programmedLitres'): number =>
    Math.max(0, ...lines.map(({ line }) => line?.[key] ?? 0));
  const column = useVolumeColumn(Math.max(largest('neededLitres'), largest('programmedLitres')));
  const count = (key: 'overLitres' | 'underLitres'): number => lines.filter(({ line }) => (line?.[key] ?? 0) > 0).length;
  const told = (litres: number | null | undefined): string => (typeof litres === 'number' && litres > 0 ? volume(litres) : 'none');
  const labels = {
    needed: intl.formatMessage({ id: 'property.zones.needed' }, { unit: column.unit }),
    programmed: intl.formatMessage({ id: 'property.zones.programmed' }, { unit: column.unit }),
    under: intl.formatMessage({ id: 'property.zones.under' }),
    over: intl.formatMessage({ id: 'property.zones.over' }),
  };
  // What is estimated from the need says nothing about too much or too little.
  const isKnown =
    typeof account.overLitres === 'number' && typeof account.underLitres === 'number' && !lines.some(({ line }) => line?.estimate);
  const heading = isKnown
    ? intl.formatMessage(
        { id: 'property.zones' },
        {
          over: count('overLitres'),
          overLitres: told(account.overLitres),
          under: count('underLitres'),
          underLitres: told(account.underLitres),
        },
      )
    : intl.formatMessage({ id: 'property.zones.unknown' });
  return (
    <Section id="zones" heading={heading} note={<FormattedMessage id="property.zones.note" />}>
      <Table
        name={intl.formatMessage({ id: 'property.zones.table' })}
        isTight
        head={<ZonesHead unit={column.unit} />}
        foot={<ZonesSum lines={lines} labels={labels} figure={column.figure} over={account.overLitres} under={account.underLitres} />}
      >
        {lines.map((each) => (
          <ZoneRow
            key={each.zone.id}
            line={each}
            figure={column.figure}
            scale={{ over: largest('overLitres'), under: largest('underLitres') }}
            names={names}
            labels={labels}
          />
        ))}
      </Table>
    </Section>
  );
}

function ZonesHead({ unit }: { readonly unit: string }) {
  return (
    <tr>
      <Head isNumber>
        <FormattedMessage id="property.zones.zone" />
      </Head>
      <Head>
        <FormattedMessage id="property.zones.name" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="property.zones.minutes" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="property.zones.needed" values={{ unit }} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="property.zones.programmed" values={{ unit }} />
      </Head>
      <th className="dev" aria-hidden="true">
        <FormattedMessage id="property.zones.bar" />
      </th>
      <Head isNumber>
        <FormattedMessage id="property.zones.under" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="property.zones.over" />
      </Head>
    </tr>
  );
}

interface SumProps {
  readonly labels: ZoneLabels;
  readonly lines: readonly ZoneLine[];
  readonly figure: (litres: number | null | undefined) => string;
  readonly over: number | null | undefined;
  readonly under: number | null | undefined;
}

/** A sum with a part that is not known is not known. */
function ZonesSum({ lines, labels, figure, over, under }: SumProps) {
  const sum = (key: 'neededLitres' | 'programmedLitres'): number | null =>
    lines.reduce<number | null>((total, { line }) => (total === null || typeof line?.[key] !== 'number' ? null : total + line[key]), 0);
  return (
    <tr>
      <td />
      <td>
        <FormattedMessage id="property.zones.sum" values={{ count: lines.length }} />
      </td>
      <td />
      <td className="num needed" data-label={labels.needed}>
        {figure(sum('neededLitres'))}
      </td>
      <td className="num programmed" data-label={labels.programmed}>
        {figure(sum('programmedLitres'))}
      </td>
      <td />
      <td className="num under" data-label={labels.under}>
        {figure(under)}
      </td>
      <td className="num over" data-label={labels.over}>
        {figure(over)}
      </td>
    </tr>
  );
}
