import { useIntl } from 'react-intl';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { useDraft } from '../../../../offline/use-draft.js';
import { useSave } from '../../device/use-save.js';
import { type FlowTold, flowTold } from './tested-flow.js';
import { subjectOf, type TestMeter, type TestProps, untoldTest } from './zone-test.js';

/** A flow test while it is made; the clock is the phone's own, so that it runs on whatever the server tells of the time. */
export interface FlowDraft {
  readonly meterId: string | null;
  readonly before: string;
  readonly startedMs: number | null;
  readonly stoppedMs: number | null;
  readonly after: string;
}

export type Phase = 'before' | 'running' | 'after';

/** A flow test as it was kept. */
export interface KeptFlow {
  readonly testedAt: string;
  readonly flowLPerMin: number;
  readonly isEnough: boolean;
}

export interface FlowInHand {
  readonly draft: FlowDraft;
  readonly phase: Phase;
  readonly meter: TestMeter | null;
  readonly told: FlowTold | null;
  readonly change: (change: Partial<FlowDraft>) => void;
  readonly begin: () => void;
  readonly save: () => Promise<void>;
  readonly kept: KeptFlow | null;
}

const EMPTY: FlowDraft = { meterId: null, before: '', startedMs: null, stoppedMs: null, after: '' };
const MINUTE_MS = 60_000;

const phaseOf = ({ startedMs, stoppedMs }: FlowDraft): Phase => (startedMs === null ? 'before' : stoppedMs === null ? 'running' : 'after');

export const minutesOf = ({ startedMs, stoppedMs }: FlowDraft): number => ((stoppedMs ?? 0) - (startedMs ?? 0)) / MINUTE_MS;

interface Options extends Pick<TestProps, 'zone' | 'given' | 'stopId' | 'now' | 'visit'> {
  readonly meters: readonly TestMeter[];
}

/** A flow test from the first register to Save; every key and every tap of the clock is on the phone at once. */
export function useFlowTest({ zone, meters, given, stopId, now, visit }: Options): FlowInHand {
  const intl = useIntl();
  const save = useSave();
  const subject = subjectOf('flow', stopId, zone.id);
  const [draft, setDraft, clear] = useDraft<FlowDraft>(subject, EMPTY);
  const meter = meters.find(({ id }) => id === (draft.meterId ?? zone.meterId)) ?? meters[0] ?? null;
  const phase = phaseOf(draft);
  const isRead = phase === 'after' && draft.before !== '' && draft.after !== '';
  const read = { registerBefore: Number(draft.before), registerAfter: Number(draft.after), minutes: minutesOf(draft) };
  const told = meter && isRead ? flowTold(meter, read) : null;
  const run = async (): Promise<void> => {
    const visitId = meter && told?.kind === 'told' ? await visit.begin() : null;
    if (!visitId || !meter) return;
    const body = { visitId, zoneId: zone.id, testedAt: now().toISOString(), meterId: meter.id, ...read, word: null };
    const words = intl.formatMessage({ id: 'field.what.flowTest' }, { zone: zone.label });
    const saved = await save({ kind: 'flow-test', payloadVersion: 1, subject, words, body: JSON.stringify(body) }, { draft: subject });
    if (saved) clear();
  };
  const kept = useKept(subject, meters, given);
  return { draft, phase, meter, told, change: (change) => setDraft({ ...draft, ...change }), begin: clear, save: run, kept };
}

/** What was saved here last, else what the server has of this visit. */
function useKept(subject: string, meters: readonly TestMeter[], given: TestProps['given']): KeptFlow | null {
  const { operations } = useOutbox();
  const last = untoldTest(operations, subject, given);
  if (last) {
    const body = JSON.parse(last.body) as {
      meterId: string;
      testedAt: string;
      registerBefore: number;
      registerAfter: number;
      minutes: number;
    };
    const meter = meters.find(({ id }) => id === body.meterId);
    const told = meter && flowTold(meter, body);
    return told?.kind === 'told' ? { testedAt: body.testedAt, flowLPerMin: told.tested.flow, isEnough: told.isEnough } : null;
  }
  const test = given.findLast(({ kind }) => kind === 'flow');
  return test ? { testedAt: test.testedAt, flowLPerMin: test.flowLPerMin ?? 0, isEnough: test.onRecord } : null;
}
