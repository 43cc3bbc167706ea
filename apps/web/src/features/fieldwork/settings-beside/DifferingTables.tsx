import { FormattedMessage, useIntl } from 'react-intl';
import type { NamedStation } from '../../../programs/named-station.js';
import type { GivenSettings } from '../../../programs/settings-fact.js';
import { PlanTable } from './PlanTable.js';
import { planPrograms } from './plan-rows.js';

interface Props {
  readonly entered: GivenSettings;
  readonly found: GivenSettings;
  readonly stations: readonly NamedStation[];
}

/** Each program of which something is to be turned, and of it only that. */
export function DifferingTables({ entered, found, stations }: Props) {
  const intl = useIntl();
  const turned = planPrograms(entered, found)
    .map((program) => ({ ...program, rows: program.rows.filter(({ differs }) => differs) }))
    .filter(({ rows }) => rows.length > 0);
  return turned.map((program) => (
    <div key={program.name}>
      <h3>
        <FormattedMessage id="field.settings.program" values={{ name: program.name }} />
      </h3>
      <PlanTable
        program={program}
        stations={stations}
        hasPlan
        words={{
          table: intl.formatMessage({ id: 'field.enter.table' }, { name: program.name }),
          planned: intl.formatMessage({ id: 'field.enter.enter' }),
          present: intl.formatMessage({ id: 'field.enter.found' }),
        }}
      />
    </div>
  ));
}
