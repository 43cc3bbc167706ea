import { FormattedMessage, useIntl } from 'react-intl';
import { useVolumeColumn } from '../../../../page/use-volume-column.js';
import type { Names } from '../../../../says/names.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import type { Shown } from './ResultsTable.js';

interface Props {
  readonly shown: readonly Shown[];
  readonly name: string;
  readonly names: Names;
}

/** Zone by zone: what each way leaves unmet, and what it wastes. */
export function ZonesCompared({ shown, name, names }: Props) {
  const intl = useIntl();
  const zones = [...(shown.at(-1)?.result.zones ?? [])].sort((a, b) => a.station - b.station);
  const column = useVolumeColumn(
    Math.max(0, ...shown.flatMap(({ result }) => result.zones.flatMap((zone) => [zone.neededLitres, zone.unmetLitres, zone.wastedLitres]))),
  );
  return (
    <Table
      name={intl.formatMessage({ id: 'plan.zones' }, { name })}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="plan.zone" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="plan.zone.needed" values={{ unit: column.unit }} />
          </Head>
          {shown.flatMap(({ key }) =>
            (['unmet', 'wasted'] as const).map((what) => (
              <Head key={`${key} ${what}`} isNumber>
                <FormattedMessage id={`plan.zone.${what}`} values={{ way: intl.formatMessage({ id: `plan.way.${key}` }) }} />
              </Head>
            )),
          )}
        </tr>
      }
    >
      {zones.map(({ zoneId, station, neededLitres }) => (
        <tr key={zoneId}>
          <td>
            <span className="soft">{station}</span> {names.of(zoneId)}
          </td>
          <Num>{column.figure(neededLitres)}</Num>
          {shown.flatMap(({ key, result }) => {
            const zone = result.zones.find((each) => each.zoneId === zoneId);
            return [
              <Num key={`${key} unmet`}>{column.figure(zone?.unmetLitres)}</Num>,
              <Num key={`${key} wasted`}>{column.figure(zone?.wastedLitres)}</Num>,
            ];
          })}
        </tr>
      ))}
    </Table>
  );
}
