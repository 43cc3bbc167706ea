import { lazy, Suspense, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import type { Names } from '../../../says/names.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { LoadingState } from '../../../ui/states/States.js';
import type { ComparedSettings } from '../../../page/work/settings-changes.js';

interface Props {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly name: string;
  readonly present: ComparedSettings | null;
  readonly names: Names;
}

const Panel = lazy(async () => ({ default: (await import('./PlanPanel.js')).PlanPanel }));

/** What a controller would best be set to; planning takes a while, so it is asked for only when this is opened. */
export function PlanFold(props: Props) {
  const viewer = useViewer();
  const [isOpened, setOpened] = useState(false);
  if (!mayDo(viewer, 'read portfolio')) return null;
  return (
    <details className="fold plan-fold" onToggle={({ currentTarget }) => currentTarget.open && setOpened(true)}>
      <summary>
        <FormattedMessage id="plan.open" values={{ name: props.name }} />
      </summary>
      {isOpened && (
        <Suspense fallback={<LoadingState />}>
          <Panel {...props} />
        </Suspense>
      )}
    </details>
  );
}
