import type { FragmentType } from '@apollo/client';
import type { FindingToDecideFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { AcceptDialog } from './accept/AcceptDialog.js';
import { DismissDialog } from './dialogs/DismissDialog.js';
import { findingToDecide, isOpen } from './finding-to-decide.js';
import { KeysDialog } from './KeysDialog.js';
import { ResolveDialog } from './dialogs/ResolveDialog.js';
import type { Deed } from './use-decide-keys.js';
import { WaitDialog } from './dialogs/WaitDialog.js';

interface Props {
  readonly deed: Deed;
  readonly finding: FragmentType<FindingToDecideFragment>;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly mayDecide: boolean;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** The dialog of a deed. What is settled is opened again first. */
export function DecideDialog({ deed, finding: masked, crews, mayDecide, onClose, onDone }: Props) {
  const finding = useMasked(findingToDecide, masked);
  if (deed === 'help') return <KeysDialog mayDecide={mayDecide} onClose={onClose} />;
  if (!isOpen(finding.state)) return null;
  switch (deed) {
    case 'accept':
      return <AcceptDialog finding={finding} crews={crews} onClose={onClose} onDone={onDone} />;
    case 'wait':
      return <WaitDialog finding={finding} onClose={onClose} onDone={onDone} />;
    case 'dismiss':
      return <DismissDialog finding={finding} onClose={onClose} onDone={onDone} />;
    case 'resolve':
      return <ResolveDialog finding={finding} onClose={onClose} onDone={onDone} />;
  }
}
