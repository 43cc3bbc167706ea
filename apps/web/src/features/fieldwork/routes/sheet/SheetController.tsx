import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { ControllerOnSheetFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import { useSays } from '../../../../says/use-says.js';
import { planPrograms } from '../../settings-beside/plan-rows.js';
import { SheetProgram } from './SheetProgram.js';

const controllerOnSheet = graphql(`
  fragment ControllerOnSheet on Controller {
    id
    name
    location
    plannedSettings {
      id
      localTime
      record
      state
      programs {
        ...ProgramFields @unmask
      }
    }
    presentSettings {
      id
      localTime
      effectiveAt
      record
      state
      programs {
        ...ProgramFields @unmask
      }
    }
  }
`);

interface Props {
  readonly controller: FragmentType<typeof controllerOnSheet>;
  readonly stations: readonly NamedStation[];
}

/** A controller on paper: what to set, what it is set to as far as is known, and room for what is found or left instead. */
export function SheetController({ controller: masked, stations }: Props) {
  const controller = useMasked(controllerOnSheet, masked);
  const planned = controller.plannedSettings ?? null;
  const present = controller.presentSettings ?? null;
  const programs = planPrograms(planned, present);
  return (
    <div className="sheet-controller">
      <h4>
        <FormattedMessage id="sheet.controllerNamed" values={{ name: controller.name }} />
        {controller.location && <small>{controller.location}</small>}
      </h4>
      <Known controller={controller} />
      {programs.map((program) => (
        <SheetProgram
          key={program.name}
          name={program.name}
          rows={program.rows}
          stations={stations}
          has={{ planned: planned !== null, present: present !== null }}
        />
      ))}
      {programs.length === 0 && planned?.state !== 'off' && (
        <SheetProgram name={null} rows={blankRows(stations)} stations={stations} has={{ planned: false, present: false }} />
      )}
      <p className="sheet-ticks">
        {(planned ? (['asPlanned', 'asNow', 'otherwise'] as const) : (['asNow', 'otherwise'] as const)).map((tick) => (
          <span key={tick}>
            <span className="box" aria-hidden="true" /> <FormattedMessage id={`sheet.tick.${tick}`} />
          </span>
        ))}
      </p>
    </div>
  );
}

/** What is planned and what it is set to, by state, and since when that is known. */
function Known({ controller: { plannedSettings: planned, presentSettings: present } }: { readonly controller: ControllerOnSheetFragment }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { word } = useSays();
  return (
    <p className="soft">
      {planned
        ? intl.formatMessage({ id: 'sheet.planned' }, { state: word('controller', planned.state) })
        : intl.formatMessage({ id: 'sheet.noPlan' })}{' '}
      {present
        ? intl.formatMessage(
            { id: 'sheet.now' },
            { record: word('record', present.record), when: moment(present.effectiveAt), state: word('controller', present.state) },
          )
        : intl.formatMessage({ id: 'field.settings.notKnown' })}
    </p>
  );
}

/** Lines for what nobody has recorded yet. */
const blankRows = (stations: readonly NamedStation[]) => {
  const row = (what: 'days' | 'station' | 'starts' | 'percent', station: number | null = null) => ({
    ...{ what, station, planned: null, present: null, differs: false },
  });
  return [row('days'), ...stations.map(({ station }) => row('station', station)), row('starts'), row('percent')];
};
