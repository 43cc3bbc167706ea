import { programInWords } from '@rillbook/irrigation/at-the-controller/program-in-words.js';
import type { PlanJudgement } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import { useEffect, useMemo, useState } from 'react';
import { factOf, type GivenProgram, type GivenSettings } from '../../../../programs/settings-fact.js';
import { type EnterAnswer, groundOf } from './answer-of.js';
import { askToEnter } from './ask-to-enter.js';

/** What was carried here to plan on. */
export interface CarriedGround {
  readonly month: string;
  readonly gatheredAt: string;
  readonly form: number;
  readonly ground?: unknown;
  readonly reason?: { readonly code: string; readonly details: unknown } | null;
}

/** The least to enter, or why it is not known. */
export type LeastToEnter =
  | {
      readonly kind: 'enter';
      readonly programs: readonly GivenProgram[];
      readonly isAsFound: boolean;
      readonly litres: { readonly needed: number; readonly asFound: number; readonly entered: number };
      /** what it still leaves unmet, where that is much, and the stations that lack most of it; null where it meets the need */
      readonly lacking: Lacking | null;
      /** whole days since what it was reckoned from was gathered */
      readonly ageDays: number;
    }
  | { readonly kind: 'reckoning' }
  | { readonly kind: 'not running' }
  | { readonly kind: 'nothing carried' }
  | { readonly kind: 'other month'; readonly month: string }
  | { readonly kind: 'missing'; readonly reason: { readonly code: string; readonly details: unknown } }
  | { readonly kind: 'failed'; readonly message: string };

interface Lacking {
  readonly litres: number;
  readonly stations: readonly number[];
}

const DAY_MS = 86_400_000;
/** Of the need: what is unmet beyond it is said. [–] */
const MUCH = 0.05;
const STATIONS_NAMED = 3;

interface Options {
  readonly carried: CarriedGround | null;
  /** as it was found here; null where nobody has said */
  readonly found: GivenSettings | null;
  /** of the property, YYYY-MM */
  readonly month: string;
  readonly now: () => Date;
}

/** What to enter on a controller so that it gives what is needed, with the fewest presses from what was found: reckoned on the phone. */
export function useLeastToEnter({ carried, found, month, now }: Options): LeastToEnter | null {
  const settled = found && settledOf(carried, found, month);
  const isAsked = found !== null && settled === null;
  const [answer, setAnswer] = useState<{ readonly question: string; readonly told: EnterAnswer } | null>(null);
  const question = useMemo(() => (isAsked && carried ? JSON.stringify([carried.ground, found.programs]) : null), [isAsked, carried, found]);
  useEffect(() => {
    const ground = carried && groundOf(carried.form, carried.ground);
    if (question === null || !ground || !found) return undefined;
    return askToEnter({ ground, found: factOf(found).programs }, (told) => setAnswer({ question, told }));
    // The question names all that is asked.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [question]);
  if (!found) return null;
  if (settled) return settled;
  if (answer === null || answer.question !== question) return { kind: 'reckoning' };
  return shown(answer.told, (now().getTime() - Date.parse(carried?.gatheredAt ?? '')) / DAY_MS);
}

function lackingIn({ zones, unmetLitres, neededLitres }: PlanJudgement): Lacking | null {
  if (unmetLitres <= MUCH * neededLitres) return null;
  const thirstiest = zones.filter((zone) => zone.unmetLitres > MUCH * zone.neededLitres).sort((a, b) => b.unmetLitres - a.unmetLitres);
  return { litres: unmetLitres, stations: thirstiest.slice(0, STATIONS_NAMED).map(({ station }) => station) };
}

/** What is settled without reckoning; null where it is to be reckoned. */
function settledOf(carried: CarriedGround | null, found: GivenSettings, month: string): LeastToEnter | null {
  if (found.state !== 'on') return { kind: 'not running' };
  if (!carried) return { kind: 'nothing carried' };
  if (carried.reason) return { kind: 'missing', reason: carried.reason };
  if (!carried.ground || !groundOf(carried.form, carried.ground)) return { kind: 'nothing carried' };
  return carried.month === month ? null : { kind: 'other month', month: carried.month };
}

function shown(told: EnterAnswer, ageDays: number): LeastToEnter {
  switch (told.kind) {
    case 'enter': {
      const { offer, asFound } = told;
      const { neededLitres, usedLitres } = offer.judgement;
      return {
        kind: 'enter',
        programs: offer.programs.map(programInWords),
        isAsFound: offer.kind === 'as set',
        litres: { needed: neededLitres, asFound: asFound.usedLitres, entered: usedLitres },
        lacking: lackingIn(offer.judgement),
        ageDays: Math.floor(ageDays),
      };
    }
    case 'stations without zone':
      return { kind: 'missing', reason: { code: 'STATIONS_WITHOUT_ZONE', details: { stations: told.stations } } };
    case 'nothing keeps all':
      return { kind: 'missing', reason: { code: 'NOTHING_KEEPS_ALL', details: {} } };
    case 'failed':
      return told;
  }
}
