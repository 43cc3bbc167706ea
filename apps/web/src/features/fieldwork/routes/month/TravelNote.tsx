import { FormattedMessage, useIntl } from 'react-intl';
import type { MonthPlanQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Footnote } from '../../../../ui/frame/Section.js';

interface Props {
  readonly travel: MonthPlanQuery['monthPlan']['travel'];
  readonly pace: MonthPlanQuery['monthPlan']['pace'];
}

/** The server's words, as the sentence takes them. */
const FAULTS: Readonly<Record<string, string>> = { 'not reached': 'reached', 'no answer in time': 'time', refused: 'refused' };

/** Where driving times come from, and what each crew's own visits say of its hours; and that a plan is advice. */
export function TravelNote({ travel, pace }: Props) {
  const intl = useIntl();
  const { number, quantity } = useFormats();
  const isEstimate = travel.source !== 'routing server';
  const lines = [
    isEstimate
      ? intl.formatMessage(
          { id: 'monthPlan.straightLine' },
          {
            factor: number(travel.factor, 1),
            speed: quantity('speed', (travel.kilometresPerHour ?? 0) / 3.6),
            minutes: number(travel.perDriveMinutes, 0),
          },
        )
      : intl.formatMessage({ id: 'monthPlan.byServer' }),
    ...(travel.serverFault ? [intl.formatMessage({ id: 'monthPlan.serverFault' }, { fault: FAULTS[travel.serverFault] ?? 'other' })] : []),
    ...pace.map(({ crew, factor, visits }) =>
      visits > 0
        ? intl.formatMessage({ id: 'monthPlan.pace' }, { crew: crew.name, factor: number(factor, 2), visits })
        : intl.formatMessage({ id: 'monthPlan.noPace' }, { crew: crew.name }),
    ),
  ];
  return (
    <Footnote>
      <p>{lines.join(' ')}</p>
      <p>
        <FormattedMessage id="monthPlan.caution" />
      </p>
    </Footnote>
  );
}
