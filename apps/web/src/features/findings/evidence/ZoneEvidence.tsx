import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { DeviationBar } from '../../../page/drawing/DeviationBar.js';
import { useVolumeColumn } from '../../../page/use-volume-column.js';
import type { Names } from '../../../says/names.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';
import type { ZonePart } from './read-evidence.js';

interface Props {
  readonly zones: readonly ZonePart[];
  readonly names: Names;
}

const byStation =
  ({ stationOf }: Names) =>
  (one: ZonePart, other: ZonePart): number =>
    (stationOf(one.zoneId) ?? Number.POSITIVE_INFINITY) - (stationOf(other.zoneId) ?? Number.POSITIVE_INFINITY);

/** Need beside programmed, zone by zone, with too little and too much apart. */
export function ZoneEvidence({ zones, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const largest = (key: 'overLitres' | 'underLitres' | 'programmedLitres' | 'neededLitres'): number =>
    Math.max(0, ...zones.map((zone) => zone[key] ?? 0));
  const column = useVolumeColumn(Math.max(largest('programmedLitres'), largest('neededLitres')));
  const scale = { over: largest('overLitres'), under: largest('underLitres') };
  const name = intl.formatMessage({ id: 'findings.zones' });
  return (
    <>
      <h2 className="small">{name}</h2>
      <Table
        name={name}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="findings.zones.zone" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="findings.zones.minutes" />
            </Head>
            {(['needed', 'programmed', 'under', 'over'] as const).map((what) => (
              <Head key={what} isNumber>
                <FormattedMessage id={`findings.zones.${what}`} values={{ unit: column.unit }} />
              </Head>
            ))}
            <th className="dev" aria-hidden="true" />
          </tr>
        }
      >
        {[...zones].sort(byStation(names)).map(({ zoneId, minutes, neededLitres, programmedLitres, underLitres, overLitres }) => (
          <tr key={zoneId}>
            <td>
              <span className="soft">{names.stationOf(zoneId)}</span> {names.of(zoneId) ?? intl.formatMessage({ id: 'says.someZone' })}
            </td>
            <Num>{formats.number(minutes)}</Num>
            <Num>{column.figure(neededLitres)}</Num>
            <Num>{column.figure(programmedLitres)}</Num>
            <td className="num water">{underLitres ? column.figure(underLitres) : ''}</td>
            <td className="num amber">{overLitres ? column.figure(overLitres) : ''}</td>
            <td className="dev">
              <DeviationBar under={underLitres} over={overLitres} scale={scale} />
            </td>
          </tr>
        ))}
      </Table>
    </>
  );
}
