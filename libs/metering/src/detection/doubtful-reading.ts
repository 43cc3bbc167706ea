import type { AccountNote, MonthAccount } from '../account/month-account.js';
import type { JudgedReading } from '../intervals/judge-reading.js';
import { probabilityAboveZero } from '../uncertainty/normal-probability.js';
import type { FindingCandidate } from './finding-candidate.js';

/** Sources contradict each other beyond three standard deviations of their resolution; readings are judged implausible beyond four. */
const CONTRADICTION_CONFIDENCE = probabilityAboveZero(3, 1);

/** A reading with the judgement on it. */
export interface ReadingUnderDoubt {
  readonly meterId: string;
  readonly date: string;
  readonly previousDate: string;
  readonly previousRegister: number;
  readonly nextRegister: number;
  readonly judged: JudgedReading;
}

/**
 * Doubtful readings of an account: sources that tell different volumes for the same time.
 *
 * @param account - The account. [code]
 * @returns One candidate for each contradiction. [code]
 */
export function doubtfulSources(account: MonthAccount): readonly FindingCandidate[] {
  return account.notes.filter(({ code }) => code === 'sources-contradict').map(contradiction);
}

/**
 * A doubtful reading as it comes in, by its judgement; a good one, or a plain rollover, is none.
 *
 * @param reading - The reading, the one before it and the judgement. [code]
 * @returns The candidate, or null where nothing is doubtful. [code]
 */
export function doubtfulReading(reading: ReadingUnderDoubt): FindingCandidate | null {
  const { meterId, date, previousDate, judged, previousRegister, nextRegister } = reading;
  if (judged.judgement === 'ok' || judged.judgement === 'rollover') return null;
  const details = { meterId, previousRegister, nextRegister, likelyRegister: judged.likelyRegister, factor: judged.factor };
  return {
    ...aboutMeter(meterId, previousDate, date),
    causeKey: `doubtful reading meter:${meterId} ${date}`,
    causeFamily: `doubtful reading meter:${meterId} ${date}`,
    litres: judged.litres,
    confidence: judged.judgement === 'lower than last' ? 1 : CONTRADICTION_CONFIDENCE,
    evidence: { ...details, litres: judged.litres },
    says: { code: judged.judgement, details },
  };
}

function contradiction({ details }: AccountNote): FindingCandidate {
  const text = (key: string) => String(details[key]);
  const key = `doubtful reading meter:${text('meterId')} ${text('from')} ${text('source')}`;
  return {
    ...aboutMeter(text('meterId'), text('from'), text('until')),
    causeKey: key,
    causeFamily: key,
    litres: Math.abs(Number(details['litres']) - Number(details['betterLitres'])),
    confidence: CONTRADICTION_CONFIDENCE,
    evidence: details,
    says: { code: 'sources-contradict', details },
  };
}

function aboutMeter(meterId: string, fromDate: string, untilDate: string) {
  return { kind: 'doubtful reading', meterId, controllerId: null, zoneIds: [], fromDate, untilDate, sdLitres: null, money: null } as const;
}
