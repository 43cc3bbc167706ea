import { LEAST_CANS, LEAST_CANS_TO_TELL, waterCaught } from '@rillbook/irrigation/hardware/catch-test/water-caught.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { useDraft } from '../../../../offline/use-draft.js';
import { useSave } from '../../device/use-save.js';
import { amountOf } from '../done/materials.js';
import { subjectOf, type TestProps, untoldTest } from './zone-test.js';

/** A test with cans while it is made, everything as typed. */
export interface CansDraft {
  readonly catches: readonly string[];
  readonly typed: string;
  readonly minutes: string;
  readonly mouth: string;
}

/** What the cans told. */
export interface CansTold {
  readonly cans: number;
  readonly uniformity: number;
  readonly rateMmPerH: number | null;
  readonly isEnough: boolean;
}

export interface CansInHand {
  readonly draft: CansDraft;
  readonly change: (change: Partial<CansDraft>) => void;
  readonly told: CansTold | null;
  readonly save: () => Promise<void>;
  readonly kept: (CansTold & { readonly testedAt: string }) | null;
}

interface Read {
  readonly catchesMl: readonly number[];
  readonly minutes: number | null;
  readonly mouthM2: number | null;
}

const EMPTY: CansDraft = { catches: [], typed: '', minutes: '', mouth: '' };
const ML_PER_LITRE = 1000;
const MM_PER_M = 1000;

/** The area of a round mouth from its width. [mm] to [m2] */
const areaOf = (widthMm: number): number => Math.PI * (widthMm / MM_PER_M / 2) ** 2;

/** What cans tell: the same computation as the server's, made on the phone; null while there are too few, or all are empty. */
export function cansTold({ catchesMl, minutes, mouthM2 }: Read): CansTold | null {
  if (catchesMl.length < LEAST_CANS) return null;
  try {
    const { uniformity, rate } = waterCaught({
      catches: catchesMl.map((each) => (each / ML_PER_LITRE) as Quantity<'L'>),
      minutes: minutes as Quantity<'min'> | null,
      mouthArea: mouthM2 as Quantity<'m2'> | null,
    });
    const isEnough = catchesMl.length >= LEAST_CANS_TO_TELL && uniformity > 0;
    return { cans: catchesMl.length, uniformity, rateMmPerH: rate, isEnough };
  } catch (problem) {
    if (problem instanceof DomainError) return null;
    throw problem;
  }
}

type Options = Pick<TestProps, 'zone' | 'given' | 'stopId' | 'now' | 'visit'>;

/** A test with cans, can by can; the evenness stands there from the fourth can on. */
export function useCansTest({ zone, given, stopId, now, visit }: Options): CansInHand {
  const intl = useIntl();
  const { typed } = useFormats();
  const save = useSave();
  const subject = subjectOf('catch', stopId, zone.id);
  const [draft, setDraft, clear] = useDraft<CansDraft>(subject, EMPTY);
  const width = draft.mouth.trim() === '' ? null : typed('depth', draft.mouth);
  const read: Read = {
    catchesMl: [...draft.catches, ...(draft.typed === '' ? [] : [draft.typed])].map(Number),
    minutes: amountOf(draft.minutes) || null,
    mouthM2: width !== null && width > 0 ? areaOf(width) : null,
  };
  const told = cansTold(read);
  const run = async (): Promise<void> => {
    const visitId = told ? await visit.begin() : null;
    if (!visitId) return;
    const body = { visitId, zoneId: zone.id, testedAt: now().toISOString(), ...read, word: null };
    const words = intl.formatMessage({ id: 'field.what.cansTest' }, { zone: zone.label });
    const saved = await save({ kind: 'catch-test', payloadVersion: 1, subject, words, body: JSON.stringify(body) }, { draft: subject });
    if (saved) clear();
  };
  const kept = useKept(subject, given);
  return { draft, change: (change) => setDraft({ ...draft, ...change }), told, save: run, kept };
}

function useKept(subject: string, given: TestProps['given']): CansInHand['kept'] {
  const { operations } = useOutbox();
  const last = untoldTest(operations, subject, given);
  if (last) {
    const body = JSON.parse(last.body) as Read & { readonly testedAt: string };
    const told = cansTold(body);
    return told && { ...told, testedAt: body.testedAt };
  }
  const test = given.findLast(({ kind }) => kind === 'catch');
  if (!test || typeof test.duLq !== 'number') return null;
  const { testedAt, catchesMl, duLq, rateMmPerH = null, onRecord } = test;
  return { testedAt, cans: catchesMl.length, uniformity: duLq, rateMmPerH, isEnough: onRecord };
}
