import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import type { GivenSettings } from '../../../../programs/settings-fact.js';
import { detailsOf, type Reason } from '../../../../says/reason.js';
import { messageOf } from '../../../../says/saying.js';
import { useSays } from '../../../../says/use-says.js';
import { DifferingTables } from '../../settings-beside/DifferingTables.js';
import type { LeastToEnter as Least } from '../enter/use-least-to-enter.js';

interface Props {
  readonly least: Least;
  readonly found: GivenSettings;
  readonly stations: readonly NamedStation[];
}

/** From so many days on, what was carried here may have been overtaken by a new rule or a new zone: the office gathers it anew each day. */
const OLD_DAYS = 7;

/** What to enter now, only what differs from what was found; or why the phone cannot tell. */
export function LeastToEnter({ least, found, stations }: Props) {
  const { month } = useFormats();
  switch (least.kind) {
    case 'enter':
      return <Reckoned least={least} found={found} stations={stations} />;
    case 'reckoning':
      return (
        <p className="after" role="status">
          <FormattedMessage id="field.enter.reckoning" />
        </p>
      );
    case 'other month':
      return (
        <p className="problem" role="alert">
          <FormattedMessage id="field.enter.otherMonth" values={{ month: month(least.month) }} />
        </p>
      );
    case 'missing':
      return <Missing reason={least.reason} />;
    case 'failed':
      return (
        <p className="problem" role="alert">
          <FormattedMessage id="field.enter.failed" values={{ message: least.message }} />
        </p>
      );
    default:
      return (
        <p className="after">
          <FormattedMessage id={least.kind === 'not running' ? 'field.enter.notRunning' : 'field.enter.nothingCarried'} />
        </p>
      );
  }
}

interface ReckonedProps extends Omit<Props, 'least'> {
  readonly least: Extract<Least, { readonly kind: 'enter' }>;
}

function Reckoned({ least: { programs, isAsFound, litres, lacking, ageDays }, found, stations }: ReckonedProps) {
  const { volume } = useSays();
  return (
    <section className="enter">
      <h2>
        <FormattedMessage id={isAsFound ? 'field.enter.leave' : 'field.enter.title'} />
      </h2>
      {ageDays >= OLD_DAYS && (
        <p className="problem" role="alert">
          <FormattedMessage id="field.enter.old" values={{ days: ageDays }} />
        </p>
      )}
      {!isAsFound && <DifferingTables entered={{ ...found, programs }} found={found} stations={stations} />}
      <p>
        <FormattedMessage
          id={isAsFound ? 'field.enter.waterLeft' : 'field.enter.water'}
          values={{ needed: volume(litres.needed), found: volume(litres.asFound), entered: volume(litres.entered) }}
        />
      </p>
      {lacking && <StillLacking lacking={lacking} stations={stations} />}
    </section>
  );
}

/** Percent, days and starts may not reach what is needed: then the numbers alone would look like a mistake. */
function StillLacking({
  lacking,
  stations,
}: { readonly lacking: NonNullable<ReckonedProps['least']['lacking']> } & Pick<Props, 'stations'>) {
  const intl = useIntl();
  const { volume } = useSays();
  const nameOf = (station: number) => stations.find((each) => each.station === station)?.name ?? String(station);
  const list = intl.formatList(lacking.stations.map(nameOf), { type: 'conjunction' });
  return (
    <p className="problem">
      <FormattedMessage id="field.enter.lacking" values={{ missing: volume(lacking.litres), count: lacking.stations.length, list }} />
    </p>
  );
}

function Missing({ reason }: { readonly reason: Reason }) {
  const intl = useIntl();
  const details = detailsOf(reason);
  const listed = details.texts('zones').length > 0 ? details.texts('zones') : details.numbers('stations').map(String);
  const values = { count: listed.length, list: intl.formatList(listed, { type: 'conjunction' }) };
  const why =
    messageOf({ intl }, `plan.reason.${reason.code}`, values) ?? intl.formatMessage({ id: 'plan.reason.other' }, { code: reason.code });
  return (
    <p className="after">
      <FormattedMessage id="field.enter.missing" values={{ why }} />
    </p>
  );
}
