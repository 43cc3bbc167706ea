import { useIntl } from 'react-intl';
import { Select } from '../../../ui/forms/Select.js';
import type { AskedZones } from './year-given.js';

interface Props {
  readonly asked: AskedZones;
  /** Null is all that the account counts. */
  readonly zoneId: string | null;
  readonly onChange: (zoneId: string | null) => void;
}

const ALL = 'all';

/** All zones together, or one. */
export function WhichZone({ asked: { zones, isWhole }, zoneId, onChange }: Props) {
  const intl = useIntl();
  const all = intl.formatMessage({ id: zones.every(({ isCounted }) => isCounted) ? 'whatIf.zone.all' : 'whatIf.zone.counted' });
  return (
    <Select
      label={intl.formatMessage({ id: 'whatIf.zone' })}
      choices={[...(isWhole ? [{ value: ALL, words: all }] : []), ...zones.map((zone) => ({ value: zone.zoneId, words: zone.name }))]}
      value={zoneId ?? ALL}
      onChange={(chosen) => onChange(chosen === ALL ? null : chosen)}
    />
  );
}
