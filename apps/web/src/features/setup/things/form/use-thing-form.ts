import { useState } from 'react';
import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { messageOf } from '../../../../says/saying.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import type { Clashed } from './Clash.js';
import { draftOf, inputOf } from '../fields/draft.js';
import type { Draft, Thing } from '../fields/field-spec.js';
import type { Wrong } from '../fields/read-field.js';
import type { Outcome, ThingKind } from './outcome.js';
import { useKept } from './use-kept.js';

interface Given {
  readonly kind: ThingKind;
  readonly thing: Thing | null;
  readonly fixed: Draft;
  readonly belongs: Readonly<Record<string, unknown>>;
  readonly refetch: readonly string[];
  readonly onEnd: () => void;
}

/** What is typed of a kept thing, and what became of saving it. */
export function useThingForm({ kind, thing, fixed, belongs, refetch, onEnd }: Given) {
  const intl = useIntl();
  const formats = useFormats();
  const toast = useToast();
  const kept = useKept(kind, refetch);
  // The thing as it was when the form was opened: a fetch meanwhile must not change what is compared.
  const [opened, setOpened] = useState(thing);
  const [draft, setDraft] = useState<Draft>(() => draftOf(formats, kind.fields, thing, fixed));
  const [wrong, setWrong] = useState<readonly Wrong[]>([]);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [clash, setClash] = useState<Clashed | null>(null);
  const settle = (outcome: Outcome | null, done: 'setup.kept' | 'setup.retired'): void => {
    switch (outcome?.__typename) {
      case 'Kept':
        toast({ words: intl.formatMessage({ id: done }) });
        return onEnd();
      case 'ChangedMeanwhile':
        return setClash({ by: outcome.changedBy ?? null, at: outcome.changedAt ?? null, version: outcome.version });
      case 'NameTaken':
        return setRefusal(intl.formatMessage({ id: 'setup.nameTaken' }, { name: outcome.name }));
      case 'StillInUse': {
        const by = messageOf({ intl }, `setup.by.${outcome.by}`) ?? outcome.by;
        return setRefusal(intl.formatMessage({ id: 'setup.stillInUse' }, { by, count: outcome.count }));
      }
      case undefined:
        return;
    }
  };
  const save = async (version: number | null): Promise<void> => {
    const { input, wrong: found } = inputOf(formats, kind.fields, draft, opened);
    setWrong(found);
    setRefusal(null);
    setClash(null);
    if (found.length > 0) return;
    const all = { ...belongs, ...input };
    settle(opened === null || version === null ? await kept.create(all) : await kept.change(opened.id, version, all), 'setup.kept');
  };
  const retire = async (): Promise<void> => {
    setRefusal(null);
    if (opened) settle(await kept.retire(opened.id, opened.version), 'setup.retired');
  };
  const takeTheirs = (theirs: Thing): void => {
    setClash(null);
    setOpened(theirs);
    setDraft(draftOf(formats, kind.fields, theirs));
  };
  const set = (key: string, value: string): void => setDraft((before) => ({ ...before, [key]: value }));
  return { opened, draft, set, wrong, refusal, clash, save, retire, takeTheirs, isBusy: kept.isBusy, problem: kept.problem };
}
