import type { PlanJudgement } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import type { Offer } from '@rillbook/irrigation/planning/offers/least-change.js';
import type { ControllerPlan as LibraryPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { keepProgram } from '../../settings/programs/keep-program.service.js';
import { showProgram } from '../../settings/programs/program.type.js';
import type { Gathered } from '../gather/plan-input.service.js';
import type { PlannedMonth } from './plan-of-controller.service.js';
import { ControllerPlan, ImpossibleNeed, PlanBreach, PlannedZone, PlanOffer, PlanResult, SharedMeter } from './controller-plan.type.js';

const MINUTES_PER_HOUR = 60;

/** A plan as the screens see it; without one, the reason. */
export function showPlan(controllerId: string, month: string, { gathered, plan, impossible }: PlannedMonth): ControllerPlan {
  const needMonths = gathered.input ? [...gathered.needMonths] : [];
  return Object.assign(new ControllerPlan(), {
    ...{ controllerId, month, reason: gathered.reason, needMonths, choices: [] },
    ...(plan ? planned(plan) : NOTHING_PLANNED),
    impossible: impossible.map((need) => Object.assign(new ImpossibleNeed(), need)),
    sharedMeter: gathered.input && sharedMeterOf(gathered),
  });
}

function sharedMeterOf({ input, shared }: Extract<Gathered, { readonly reason: null }>): SharedMeter | null {
  if (!shared || input.flowLimitLPerMin === null) return null;
  return Object.assign(new SharedMeter(), {
    by: shared.by,
    controllerIds: [...shared.controllerIds],
    flowLPerMin: input.flowLimitLPerMin,
    from: clockOf(input.window.from),
    until: clockOf(input.window.until),
  });
}

const NOTHING_PLANNED = { present: null, leastChange: null, full: null, gapShare: null, layoutShare: null };

const planned = ({ present, leastChange, full, gapShare, layoutShare }: LibraryPlan) => ({
  present: present && showResult(present),
  leastChange: leastChange && showOffer(leastChange),
  full: showOffer(full),
  gapShare,
  layoutShare,
});

function showOffer({ kind, programs, judgement }: Offer): PlanOffer {
  return Object.assign(new PlanOffer(), { kind, programs: programs.map(keepProgram).map(showProgram), result: showResult(judgement) });
}

function showResult(judgement: PlanJudgement): PlanResult {
  const { usedLitres, neededLitres, unmetLitres, wastedLitres, ranOffLitres, keyPresses } = judgement;
  return Object.assign(new PlanResult(), {
    ...{ usedLitres, neededLitres, unmetLitres, wastedLitres, ranOffLitres, keyPresses },
    zones: judgement.zones.map((zone) => Object.assign(new PlannedZone(), zone)),
    beginsAt: clockOf(judgement.beginsAt),
    endsAt: clockOf(judgement.endsAt),
    breaches: judgement.breaches.map(({ rule, kind, program, stations, times }) =>
      Object.assign(new PlanBreach(), { rule, kind, program, stations: [...stations], times }),
    ),
    limits: [...judgement.limits],
  });
}

// A last run that ends within a minute has ended in it.
const clockOf = (minutes: number | null): string | null =>
  minutes === null
    ? null
    : [Math.floor(minutes / MINUTES_PER_HOUR) % 24, Math.floor(minutes % MINUTES_PER_HOUR)]
        .map((part) => String(part).padStart(2, '0'))
        .join(':');
