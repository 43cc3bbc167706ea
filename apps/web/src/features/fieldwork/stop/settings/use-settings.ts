import { useMemo, useState } from 'react';
import { useIntl } from 'react-intl';
import type { Operation } from '../../../../offline/operation.js';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { localTimeAt } from '../../../../page/values/local-instant.js';
import { useSave } from '../../device/use-save.js';
import type { VisitHere } from '../use-visit.js';
import { type GivenProgram, type GivenSettings, sentPrograms } from '../../../../programs/settings-fact.js';

export interface KeptFact {
  readonly record: string;
  readonly at: string;
  readonly isOther: boolean;
  readonly by: string | null;
}

type FoundFact = GivenSettings & { readonly effectiveAt: string };

interface Options {
  readonly controller: {
    readonly id: string;
    readonly name: string;
    readonly presentSettings?: { readonly id: string; readonly effectiveAt: string } | null;
  };
  readonly stopId: string;
  readonly timeZone: string;
  readonly now: () => Date;
  readonly begin: VisitHere['begin'];
}

export interface SettingsDeed {
  readonly record: (record: 'found' | 'left', state: string, programs: readonly GivenProgram[]) => Promise<boolean>;
  readonly kept: KeptFact | null;
  /** what was found here, as it was saved; null where nobody said that it is different */
  readonly found: FoundFact | null;
  readonly again: () => void;
}

/** Saves settings of a controller at a stop. What was found leads on to what is left; what is left ends the step. */
export function useSettings({ controller, stopId, timeZone, now, begin }: Options): SettingsDeed {
  const intl = useIntl();
  const save = useSave();
  const { operations } = useOutbox();
  const [passedOver, setPassedOver] = useState<string | null>(null);
  const subjectOf = (as: 'found' | 'left'): string => `settings ${as} ${stopId} ${controller.id}`;
  const left = operations.findLast(({ subject, state }) => subject === subjectOf('left') && state !== 'refused') ?? null;
  const foundHere = operations.findLast(({ subject, state }) => subject === subjectOf('found') && state !== 'refused');
  const foundBody = foundHere?.body ?? null;
  const found = useMemo(() => (foundBody === null ? null : (JSON.parse(foundBody) as FoundFact)), [foundBody]);
  const record: SettingsDeed['record'] = async (as, state, programs) => {
    const at = now();
    // What is found or left is a deed like any other; it stands also where the arrival could not be kept.
    void begin();
    const body = {
      controllerId: controller.id,
      effectiveAt: at.toISOString(),
      localTime: localTimeAt(at.getTime(), timeZone),
      record: as,
      state,
      programs: state === 'on' ? sentPrograms(programs) : [],
    };
    const words = intl.formatMessage({ id: 'field.what.settings' }, { name: controller.name });
    const saved = await save({ kind: 'settings', payloadVersion: 1, subject: subjectOf(as), words, body: JSON.stringify(body) });
    if (saved && as === 'left') setPassedOver(null);
    return saved !== null;
  };
  const isKept = left !== null && left.key !== passedOver && !isOvertaken(left, controller.presentSettings ?? null);
  return { record, kept: isKept ? keptOf(left) : null, found, again: () => setPassedOver(left?.key ?? null) };
}

/** Whether somebody found or left it otherwise since: then that is what stands. */
function isOvertaken(left: Operation, present: { readonly id: string; readonly effectiveAt: string } | null): boolean {
  const { effectiveAt } = JSON.parse(left.body) as Told;
  return present !== null && Date.parse(present.effectiveAt) > Date.parse(effectiveAt);
}

interface Told {
  readonly record: string;
  readonly effectiveAt: string;
  readonly by?: string | null;
}

function keptOf({ body, told }: Operation): KeptFact {
  const isOther = told?.verdict === 'conflict' && told.other !== null;
  const { record, effectiveAt, by = null } = (isOther ? told.other : JSON.parse(body)) as Told;
  return { record, at: effectiveAt, isOther, by };
}
