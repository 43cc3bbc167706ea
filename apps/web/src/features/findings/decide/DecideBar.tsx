import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import type { FindingToDecideFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { Kbd } from '../../../ui/tables/Kbd.js';
import { ChangedNote } from './ChangedNote.js';
import { findingToDecide, isOpen } from './finding-to-decide.js';
import type { Deed } from './use-decide-keys.js';
import { useSettle } from './use-settle.js';

interface Props {
  readonly finding: FragmentType<FindingToDecideFragment>;
  readonly onChoose: (deed: Deed) => void;
}

/** What can be decided now, the main thing first. */
export function DecideBar({ finding: masked, onChoose }: Props) {
  const finding = useMasked(findingToDecide, masked);
  const settle = useSettle();
  if (!isOpen(finding.state))
    return (
      <>
        {settle.problem ? <ErrorState problem={settle.problem} /> : null}
        <ChangedNote changed={settle.changed} />
        <div className="decide">
          <Button isBusy={settle.isBusy} onClick={() => void settle.reopen(finding.id, finding.version)}>
            <FormattedMessage id="findings.reopen" />
          </Button>
        </div>
      </>
    );
  return (
    <div className="decide">
      <Button kind="main" onClick={() => onChoose('accept')}>
        <FormattedMessage id="findings.accept" /> <Kbd>a</Kbd>
      </Button>
      <Button kind="plain" onClick={() => onChoose('wait')}>
        <FormattedMessage id="findings.wait" /> <Kbd>s</Kbd>
      </Button>
      <Button kind="plain" onClick={() => onChoose('dismiss')}>
        <FormattedMessage id="findings.dismiss" /> <Kbd>d</Kbd>
      </Button>
      <Button kind="plain" onClick={() => onChoose('resolve')}>
        <FormattedMessage id="findings.resolve" /> <Kbd>r</Kbd>
      </Button>
    </div>
  );
}
