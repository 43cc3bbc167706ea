import { useState } from 'react';
import { useIntl } from 'react-intl';
import type { Operation } from '../../../../offline/operation.js';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { useSave } from '../../device/use-save.js';
import { judgeOnPhone, type MeterOfReadings } from './use-judgement.js';

/** What stands now: the reading that was saved here, or another that was there before it. */
export interface Kept {
  readonly register: number;
  readonly readAt: string;
  readonly litresSinceLast: number | null;
  readonly judgement: string;
  readonly note: string | null;
  readonly isOther: boolean;
  readonly by: string | null;
}

interface Options {
  readonly meter: MeterOfReadings & { readonly id: string; readonly name: string };
  readonly stopId: string;
  readonly draft: string;
  readonly now: () => Date;
}

interface Reading {
  readonly save: (register: number, note: string | null) => Promise<boolean>;
  readonly kept: Kept | null;
  /** The reading in whose place the next one comes. */
  readonly replacesId: string | null;
  /** Reads the same meter again, in place of what was kept. */
  readonly again: () => void;
}

/** Saves a reading of a meter at a stop; read again, it takes the place of what was saved. */
export function useReading({ meter, stopId, draft, now }: Options): Reading {
  const intl = useIntl();
  const save = useSave();
  const { operations } = useOutbox();
  const subject = `reading ${stopId} ${meter.id}`;
  const last = operations.findLast((one) => one.subject === subject) ?? null;
  const [passedOver, setPassedOver] = useState<string | null>(null);
  const replacesId = last && replacedBy(last);
  const run = async (register: number, note: string | null): Promise<boolean> => {
    const body = { meterId: meter.id, register, note, readAt: now().toISOString(), replacesId };
    const words = intl.formatMessage({ id: 'field.what.reading' }, { name: meter.name });
    const saved = await save({ kind: 'reading', payloadVersion: 1, subject, words, body: JSON.stringify(body) }, { draft });
    if (saved) setPassedOver(null);
    return saved !== null;
  };
  const isKept = last !== null && last.state !== 'refused' && last.key !== passedOver;
  return { save: run, again: () => setPassedOver(last?.key ?? null), replacesId, kept: isKept ? keptOf(last, meter) : null };
}

interface Body {
  readonly register: number;
  readonly readAt: string;
  readonly note: string | null;
  readonly replacesId: string | null;
}

interface Other {
  readonly register: number;
  readonly readAt: string;
  readonly note: string | null;
  readonly by: string | null;
}

/** Before it ever left, what is said again takes its place; after that it is another reading, which names the one that it corrects. */
function replacedBy(last: Operation): string | null {
  const { replacesId } = JSON.parse(last.body) as Body;
  return last.hasLeft && last.state !== 'refused' && last.told?.verdict !== 'conflict' ? last.key : replacesId;
}

function keptOf({ body, told }: Operation, meter: MeterOfReadings): Kept {
  const isOther = told?.verdict === 'conflict' && told.other !== null;
  const { register, readAt, note, ...rest } = isOther ? (told.other as Other) : (JSON.parse(body) as Body);
  const { replacesId = null } = JSON.parse(body) as Partial<Body>;
  const judged = judgeOnPhone(meter, { register, readAt: new Date(readAt), replacesId });
  return {
    register,
    readAt,
    note,
    isOther,
    by: 'by' in rest ? rest.by : null,
    litresSinceLast: judged?.litresSinceLast ?? null,
    judgement: judged?.judgement ?? 'first',
  };
}
