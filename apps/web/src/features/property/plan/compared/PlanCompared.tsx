import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { Names } from '../../../../says/names.js';
import type { ComparedSettings } from '../../../../page/work/settings-changes.js';
import { ImpossibleNeeds } from './ImpossibleNeeds.js';
import { OfferedPrograms } from './OfferedPrograms.js';
import type { Offer, Plan } from '../plan-document.js';
import { ResultsTable, type Shown } from './ResultsTable.js';
import { SharedMeterNote } from './SharedMeterNote.js';
import { ZoneChoicesTable } from './ZoneChoicesTable.js';
import { ZonesCompared } from './ZonesCompared.js';

interface Props {
  readonly plan: Plan;
  readonly full: Offer;
  readonly name: string;
  readonly present: ComparedSettings | null;
  readonly names: Names;
}

/** As it is set and both offers side by side, what no program can give, and what to enter. */
export function PlanCompared({ plan, full, name, present, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const least = plan.leastChange ?? null;
  const shown: readonly Shown[] = [
    ...(plan.present ? [{ key: 'present' as const, result: plan.present }] : []),
    ...(least ? [{ key: 'least' as const, result: least.result }] : []),
    { key: 'full' as const, result: full.result },
  ];
  const months = intl.formatList(plan.needMonths.map(formats.month), { type: 'conjunction' });
  return (
    <>
      <ResultsTable shown={shown} name={name} />
      {!plan.present && (
        <p className="soft">
          <FormattedMessage id="plan.noPresent" />
        </p>
      )}
      {!least && (
        <p className="soft">
          <FormattedMessage id="plan.noLeast" />
        </p>
      )}
      <SharedMeterNote shared={plan.sharedMeter} names={names} />
      <ImpossibleNeeds needs={plan.impossible} names={names} />
      <ZonesCompared shown={shown} name={name} names={names} />
      <ZoneChoicesTable zones={plan.choices} planned={full.result.zones} short={plan.impossible} name={name} names={names} />
      {least && <OfferedPrograms offer={least} name={name} present={present} />}
      <OfferedPrograms offer={full} name={name} present={present} />
      <p className="soft">
        <FormattedMessage id="plan.need" values={{ months, own: plan.needMonths.join() === plan.month ? 'yes' : 'no' }} />{' '}
        {typeof plan.gapShare === 'number' && (
          <FormattedMessage
            id="plan.proof"
            values={{ gap: formats.percent(plan.gapShare, 1), layout: formats.percent(plan.layoutShare ?? 0, 1) }}
          />
        )}
      </p>
    </>
  );
}
