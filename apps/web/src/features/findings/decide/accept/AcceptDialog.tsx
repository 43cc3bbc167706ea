import { type FormEvent, useId, useMemo, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../../graphql/__generated__/graphql.js';
import { namesOf } from '../../../../says/names.js';
import { useSays } from '../../../../says/use-says.js';
import { useViewer } from '../../../../session/viewer.js';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { Button } from '../../../../ui/forms/Button.js';
import { type AcceptDraft, AcceptForm, type AcceptProblems, acceptProblems, monthToEnter, NOBODY } from './AcceptForm.js';
import { suggestedWork } from './suggested-work.js';
import { useAccept } from './use-accept.js';

interface Props {
  readonly finding: FindingToDecideFragment;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** A finding becomes work. */
export function AcceptDialog({ finding, crews, onClose, onDone }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const accept = useAccept();
  const form = useId();
  const { today } = useViewer().organization;
  const names = useMemo(() => namesOf(finding.property), [finding.property]);
  const says = useSays(names);
  const [draft, setDraft] = useState<AcceptDraft>(() => begun(finding.kind, says.finding(finding)));
  const [problems, setProblems] = useState<AcceptProblems>({});
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = acceptProblems(intl, draft, today);
    setProblems(wrong);
    if (Object.keys(wrong).length > 0) return;
    const crew = crews.find(({ id }) => id === draft.crewId);
    const said = await accept.run(
      finding,
      { ...inputOf(finding, draft, today), wordsOf: draft.what.trim() === says.finding(finding).trim() ? 'finding' : null },
      crew ? { crewId: crew.id, crew: crew.name, day: draft.day } : null,
    );
    if (said === null) return;
    toast({ words: said });
    onDone();
  };
  return (
    <Dialog
      isOpen
      heading={intl.formatMessage({ id: 'accept.title' }, { property: finding.property.name })}
      onClose={onClose}
      actions={
        <>
          <Button kind="main" type="submit" form={form} isBusy={accept.isBusy}>
            <FormattedMessage id="accept.do" />
          </Button>
          <Button kind="plain" onClick={onClose}>
            <FormattedMessage id="parts.cancel" />
          </Button>
        </>
      }
    >
      <AcceptForm
        id={form}
        draft={draft}
        problems={problems}
        accept={accept}
        controllerId={finding.controllerId ?? null}
        names={names}
        crews={crews}
        onChange={(change) => setDraft((before) => ({ ...before, ...change }))}
        onSubmit={(event) => void submit(event)}
      />
    </Dialog>
  );
}

const begun = (kind: string, what: string): AcceptDraft => ({ kind: suggestedWork(kind), what, crewId: NOBODY, day: '', wished: null });

const inputOf = ({ id, property, controllerId, meterId, zoneId }: FindingToDecideFragment, draft: AcceptDraft, today: string) => ({
  findingId: id,
  propertyId: property.id,
  controllerId: controllerId ?? null,
  meterId: meterId ?? null,
  zoneId: zoneId ?? null,
  kind: draft.kind,
  what: draft.what.trim(),
  settings:
    draft.kind === 'adjust' && controllerId
      ? { offer: draft.wished === 'full program' ? draft.wished : 'least change', month: monthToEnter(draft, today) }
      : null,
});
