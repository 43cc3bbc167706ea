import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { problemOf } from '../../../graphql/problem.js';
import { wipeStore } from '../../../offline/leave.js';
import { usePhone, useWaiting } from '../../../offline/PhoneProvider.js';
import { storeName } from '../../../offline/store.js';
import { oweSignOut } from '../../../session/owed-sign-out.js';
import { forgetViewer } from '../../../session/remembered-viewer.js';
import { useViewer } from '../../../session/viewer.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { ExportUnsent } from './ExportUnsent.js';

const leavePhoneDocument = graphql(`
  mutation LeavePhone {
    signOut
  }
`);

/** Signs out and leaves nothing here, without signal too: the server is told when it answers. What only this phone has is first saved as a file, in the person's hands. */
export function SignOut() {
  const phone = usePhone();
  const { memberId, organization } = useViewer();
  const { waiting, photos, refused } = useWaiting();
  const [signOut] = useMutation(leavePhoneDocument);
  const [isAsked, setAsked] = useState(false);
  const [isSaved, setSaved] = useState(false);
  const [problem, setProblem] = useState<unknown>(null);
  const unsent = waiting + photos + refused;
  const leave = async (): Promise<void> => {
    try {
      await signOut();
    } catch (thrown) {
      if (problemOf(thrown).kind !== 'noAnswer') return setProblem(thrown);
      oweSignOut();
    }
    phone.close();
    forgetViewer();
    await wipeStore(storeName(organization.id, memberId));
    window.location.assign('/sign-in');
  };
  return (
    <div className="after">
      {isAsked && unsent > 0 && (
        <>
          <p className="problem" role="alert">
            <FormattedMessage id="field.phone.onlyHere" values={{ count: unsent }} />
          </p>
          <ExportUnsent onSaved={() => setSaved(true)} />
        </>
      )}
      {problem ? <ErrorState problem={problem} onRetry={() => void leave()} /> : null}
      {(!isAsked || unsent === 0 || isSaved) && (
        <Button kind="plain" onClick={() => (unsent > 0 && !isSaved ? setAsked(true) : void leave())}>
          <FormattedMessage id={unsent > 0 && isSaved ? 'field.phone.leaveAnyway' : 'frame.signOut'} />
        </Button>
      )}
    </div>
  );
}
