import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import type { MeterOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { EmptyState } from '../../../ui/states/States.js';
import { MeterSection } from './MeterSection.js';

interface Props {
  readonly meters: readonly (FragmentType<MeterOfPropertyFragment> & { readonly id: string })[];
}

/** Each meter with its readings; without one, how to bring it in. */
export function MetersSection({ meters }: Props) {
  const intl = useIntl();
  if (meters.length === 0)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'property.meter.none' })}>
        {intl.formatMessage({ id: 'property.meter.none.how' })}
      </EmptyState>
    );
  return meters.map((meter) => <MeterSection key={meter.id} meter={meter} />);
}
