import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { paths } from '../../../page/paths.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import type { Names } from '../../../says/names.js';
import { useViewer } from '../../../session/viewer.js';
import { Select } from '../../../ui/forms/Select.js';
import { EmptyState } from '../../../ui/states/States.js';
import type { ComparedSettings } from '../../../page/work/settings-changes.js';
import { monthsFrom } from './months-from.js';
import { ImpossibleNeeds } from './compared/ImpossibleNeeds.js';
import { PlanCompared } from './compared/PlanCompared.js';
import { planDocument } from './plan-document.js';
import { planReason } from '../../../page/work/plan-reason.js';
import './plan.css';

interface Props {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly name: string;
  readonly present: ComparedSettings | null;
  readonly names: Names;
}

/** A month of a controller planned: this one, or one of the eleven that follow. */
export function PlanPanel({ controllerId, propertyId, name, present, names }: Props) {
  const intl = useIntl();
  const { month: inWords } = useFormats();
  const { organization } = useViewer();
  const months = monthsFrom(organization.today.slice(0, 7));
  const [month, setMonth] = useState(months[0]!);
  const query = useQuery(planDocument, { variables: { id: controllerId, month }, fetchPolicy: 'cache-and-network' });
  const why = (plan: { readonly reason?: Parameters<typeof planReason>[2] | null } | null | undefined): string =>
    plan?.reason ? planReason(intl, names, plan.reason) : intl.formatMessage({ id: 'plan.reason.gone' });
  return (
    <div className="plan-panel">
      <div className="tools">
        <Select
          label={intl.formatMessage({ id: 'plan.month' })}
          value={month}
          choices={months.map((value) => ({ value, words: sentenceCase(inWords(value)) }))}
          onChange={setMonth}
        />
        <Link to={paths.cabinetCard(propertyId, controllerId)}>
          <FormattedMessage id="card.open" />
        </Link>
      </div>
      <Fetched query={query}>
        {({ controller }) =>
          controller?.plan?.full ? (
            <PlanCompared plan={controller.plan} full={controller.plan.full} name={name} present={present} names={names} />
          ) : (
            <>
              <EmptyState sentence={intl.formatMessage({ id: 'plan.none' })}>{why(controller?.plan)}</EmptyState>
              <ImpossibleNeeds needs={controller?.plan?.impossible ?? []} names={names} />
            </>
          )
        }
      </Fetched>
    </div>
  );
}
