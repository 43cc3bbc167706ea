import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { Tabs } from '../../../ui/dialogs/Tabs.js';
import type { NamedStation } from '../../../programs/named-station.js';
import { PlanTable } from './PlanTable.js';
import { planPrograms, stateDiffers } from './plan-rows.js';
import type { GivenSettings } from '../../../programs/settings-fact.js';

interface Props {
  readonly planned: GivenSettings | null;
  readonly present: (GivenSettings & { readonly effectiveAt: string }) | null;
  readonly stations: readonly NamedStation[];
  /** Whether the least to enter can be reckoned here from what is found. */
  readonly canReckon: boolean;
}

/** The programs, one at a time: what is planned beside what is on the controller now. */
export function PlannedBesidePresent({ planned, present, stations, canReckon }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const programs = planPrograms(planned, present);
  const [chosen, setChosen] = useState<string | null>(null);
  const first = programs.find(({ differ }) => differ > 0) ?? programs[0];
  const program = programs.find(({ name }) => name === chosen) ?? first;
  const isStateOnly = stateDiffers(planned, present);
  const isCompared = planned !== null && present !== null && !isStateOnly;
  const state = (settings: GivenSettings): string => word('controller', settings.state);
  return (
    <>
      <PresentLine present={present} />
      {isStateOnly && planned && present && (
        <p className="state-differs">
          <FormattedMessage id="field.settings.stateDiffers" values={{ planned: state(planned), present: state(present) }} />
        </p>
      )}
      {!planned && <NoPlan canReckon={canReckon} />}
      {program && (
        <Tabs
          label={intl.formatMessage({ id: 'field.settings.programs' })}
          tabs={programs.map(({ name, differ }) => ({ name, words: <ProgramTab name={name} differ={isCompared ? differ : null} /> }))}
          chosen={program.name}
          onChoose={setChosen}
        >
          <PlanTable program={program} stations={stations} hasPlan={planned !== null} />
        </Tabs>
      )}
    </>
  );
}

function NoPlan({ canReckon }: { readonly canReckon: boolean }) {
  return (
    <p className="after">
      <FormattedMessage id={canReckon ? 'field.enter.noPlan' : 'field.settings.noPlan'} />
    </p>
  );
}

/** A program and how much of it is not as planned. */
function ProgramTab({ name, differ }: { readonly name: string; readonly differ: number | null }) {
  return (
    <>
      {name}
      {differ !== null && (
        <span className="tab-count">
          <FormattedMessage id="field.settings.differ" values={{ count: differ }} />
        </span>
      )}
    </>
  );
}

/** What the controller is set to, and since when it is known. */
function PresentLine({ present }: Pick<Props, 'present'>) {
  const { moment } = useFormats();
  const { word } = useSays();
  if (!present)
    return (
      <p className="where">
        <FormattedMessage id="field.settings.notKnown" />
      </p>
    );
  const { record, effectiveAt, state } = present;
  return (
    <p className="where">
      <FormattedMessage
        id="field.settings.present"
        values={{ record: word('record', record), when: moment(effectiveAt), state: word('controller', state) }}
      />
    </p>
  );
}
