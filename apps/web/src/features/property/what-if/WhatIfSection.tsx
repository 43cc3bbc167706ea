import { lazy, Suspense, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { Section } from '../../../ui/frame/Section.js';
import { LoadingState } from '../../../ui/states/States.js';

interface Props {
  readonly propertyId: string;
  /** The year that is asked about ends with it, where it is over. */
  readonly month: string | null;
}

// What computes a year comes when somebody asks.
const Panel = lazy(async () => ({ default: (await import('./WhatIfPanel.js')).WhatIfPanel }));

/** What other plants, better nozzles or less lawn would save; folded until it is asked for. */
export function WhatIfSection({ propertyId, month }: Props) {
  const intl = useIntl();
  const viewer = useViewer();
  const [isOpened, setOpened] = useState(false);
  if (!mayDo(viewer, 'read portfolio')) return null;
  return (
    <Section id="what-if" heading={intl.formatMessage({ id: 'whatIf' })}>
      <details className="fold" onToggle={({ currentTarget }) => currentTarget.open && setOpened(true)}>
        <summary>
          <FormattedMessage id="whatIf.open" />
        </summary>
        {isOpened && (
          <Suspense fallback={<LoadingState />}>
            <Panel propertyId={propertyId} month={month} />
          </Suspense>
        )}
      </details>
    </Section>
  );
}
