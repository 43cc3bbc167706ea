import { FormattedMessage } from 'react-intl';
import type { PropertyOfZonesFragment, ZonesOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { DeviationBar, type DeviationScale } from '../../../page/drawing/DeviationBar.js';
import type { Names } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';

export interface ZoneLine {
  readonly zone: PropertyOfZonesFragment['zones'][number];
  readonly line: ZonesOfAccountFragment['zones'][number] | null;
}

/** The heads again, for where the row folds and they are not in sight. */
export type ZoneLabels = Readonly<Record<'needed' | 'programmed' | 'under' | 'over', string>>;

interface Props {
  readonly line: ZoneLine;
  readonly figure: (litres: number | null | undefined) => string;
  readonly scale: DeviationScale;
  readonly names: Names;
  readonly labels: ZoneLabels;
}

/** One zone: what it needed and what the settings put out; where one is not known, why. */
export function ZoneRow({ line: { zone, line }, figure, scale, names, labels }: Props) {
  const formats = useFormats();
  const { neededLitres, programmedLitres, underLitres, overLitres, minutes } = line ?? {};
  return (
    <tr>
      <td className="num station">{zone.station ?? ''}</td>
      <td>
        <ZoneName zone={zone} line={line} names={names} />
      </td>
      <td className="num minutes">{formats.number(minutes)}</td>
      <td className="num needed" data-label={labels.needed}>
        {figure(neededLitres)}
      </td>
      <td className="num programmed" data-label={labels.programmed}>
        {figure(programmedLitres)}
      </td>
      <td className="dev">
        <DeviationBar under={underLitres} over={overLitres} scale={scale} />
      </td>
      <td className="num water under" data-label={labels.under}>
        {underLitres ? figure(underLitres) : null}
      </td>
      <td className="num amber over" data-label={labels.over}>
        {overLitres ? figure(overLitres) : null}
      </td>
    </tr>
  );
}

interface NameProps {
  readonly zone: ZoneLine['zone'];
  readonly line: ZoneLine['line'];
  readonly names: Names;
}

/** Name, plants and method; what of it is not known. */
function ZoneName({ zone: { name, plants, method, unmetered }, line, names }: NameProps) {
  const says = useSays(names);
  const planted = [plants && says.word('plants', plants), says.word('method', method)].filter(Boolean).join(', ');
  return (
    <>
      {name} <span className="soft xs">{planted}</span>
      {unmetered && (
        <span className="soft xs">
          {' · '}
          <FormattedMessage id="property.zones.unmetered" />
        </span>
      )}
      {line?.reason && <span className="xs soft line">{says.reason(line.reason)}</span>}
      {line?.estimate && (
        <span className="xs soft line">
          <FormattedMessage id="says.estimate" />
        </span>
      )}
    </>
  );
}
