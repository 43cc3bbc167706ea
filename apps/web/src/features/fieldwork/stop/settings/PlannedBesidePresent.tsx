import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import { Tabs } from '../../../../ui/dialogs/Tabs.js';
import { Table } from '../../../../ui/tables/Table.js';
import type { NamedStation } from './ControllerSettings.js';
import { PlanLine } from './PlanLine.js';
import { planPrograms, stateDiffers } from './plan-rows.js';
import type { GivenSettings } from './settings-fact.js';

interface Props {
  readonly planned: GivenSettings | null;
  readonly present: (GivenSettings & { readonly effectiveAt: string }) | null;
  readonly stations: readonly NamedStation[];
}

/** The programs, one at a time: what is planned beside what is on the controller now. */
export function PlannedBesidePresent({ planned, present, stations }: Props) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { word } = useSays();
  const programs = planPrograms(planned, present);
  const [chosen, setChosen] = useState<string | null>(null);
  const first = programs.find(({ differ }) => differ > 0) ?? programs[0];
  const program = programs.find(({ name }) => name === chosen) ?? first;
  const isStateOnly = stateDiffers(planned, present);
  return (
    <>
      <p className="where">
        {present ? (
          <FormattedMessage
            id="field.settings.present"
            values={{ record: word('record', present.record), when: moment(present.effectiveAt), state: word('controller', present.state) }}
          />
        ) : (
          <FormattedMessage id="field.settings.notKnown" />
        )}
      </p>
      {isStateOnly && planned && present && (
        <p className="state-differs">
          <FormattedMessage
            id="field.settings.stateDiffers"
            values={{ planned: word('controller', planned.state), present: word('controller', present.state) }}
          />
        </p>
      )}
      {program && (
        <Tabs
          label={intl.formatMessage({ id: 'field.settings.programs' })}
          tabs={programs.map(({ name, differ }) => ({
            name,
            words: (
              <>
                {name}
                {planned && present && !isStateOnly && (
                  <span className="tab-count">
                    <FormattedMessage id="field.settings.differ" values={{ count: differ }} />
                  </span>
                )}
              </>
            ),
          }))}
          chosen={program.name}
          onChoose={setChosen}
        >
          <Table
            name={intl.formatMessage({ id: 'field.settings.table' }, { name: program.name })}
            look="plan"
            head={
              <tr>
                <th scope="col">
                  <span className="vh">
                    <FormattedMessage id="field.settings.setting" />
                  </span>
                </th>
                {planned && (
                  <th scope="col">
                    <FormattedMessage id="field.settings.planned" />
                  </th>
                )}
                <th scope="col" className={planned ? 'was' : undefined}>
                  <FormattedMessage id="field.settings.now" />
                </th>
              </tr>
            }
          >
            {program.rows.map((row) => (
              <PlanLine key={`${row.what} ${row.station ?? ''}`} row={row} stations={stations} hasPlan={planned !== null} />
            ))}
          </Table>
        </Tabs>
      )}
    </>
  );
}
