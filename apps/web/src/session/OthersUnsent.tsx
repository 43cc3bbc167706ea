import { useContext, useEffect, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { othersUnsent, type Unsent } from '../offline/leave.js';
import { storeName } from '../offline/store.js';
import { ViewerContext } from './viewer.js';

/** Said at the door and on the phone's page: what somebody else saved on this phone waits for them, and for nobody else. */
export function OthersUnsent() {
  const viewer = useContext(ViewerContext);
  const own = viewer && storeName(viewer.organization.id, viewer.memberId);
  const [others, setOthers] = useState<readonly Unsent[]>([]);
  useEffect(() => {
    let isGone = false;
    othersUnsent(own).then(
      (found) => {
        if (!isGone) setOthers(found);
      },
      // A browser that keeps nothing has nothing of others; what it says of itself stands elsewhere.
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [own]);
  return others.map(({ owner, count }) => (
    <p key={owner ?? ''} className="problem" role="status">
      <FormattedMessage id="field.phone.others" values={{ name: owner ?? 'nobody', count, isNamed: String(owner !== null) }} />
    </p>
  ));
}
