import type { FindingKind } from '../finding-candidate.js';
import type { DismissReason } from './kept-finding.js';

/** Reasons that say that what was seen was there, though nothing had to be done. */
const CONFIRMING: readonly DismissReason[] = ['hand watering known', 'meter known to be off', 'client wants it', 'looked after'];

/** A finding that somebody decided. */
export interface DecidedFinding {
  readonly kind: FindingKind;
  readonly hadWork: boolean;
  readonly state: 'in work' | 'resolved' | 'dismissed';
  readonly dismissedReason: DismissReason | null;
}

/** Fewer decisions than this say nothing of a kind. An assumption. */
const FEWEST_DECIDED = 8;

/** A kind of which less than this was worth a look is told last. Common practice of alerting. [–] */
const LEAST_SHARE = 0.5;

/** How often findings of a kind were worth a look, of those that somebody decided; `isSeldomUseful` where less than half were, of eight at least. [–] */
export interface KindPrecision {
  readonly kind: FindingKind;
  readonly decided: number;
  readonly ledToWork: number;
  readonly confirmed: number;
  readonly share: number;
  readonly isSeldomUseful: boolean;
}

/**
 * How often findings were worth a look, by kind: those that led to work or were confirmed, of those that somebody decided.
 *
 * @param decided - Findings that a person put to work, resolved or dismissed. [code]
 * @returns By kind, the most decided first; a kind of which none is decided is not there. [–]
 */
export function precisionByKind(decided: readonly DecidedFinding[]): readonly KindPrecision[] {
  const kinds = [...new Set(decided.map(({ kind }) => kind))];
  return kinds
    .map((kind) => {
      const own = decided.filter((one) => one.kind === kind);
      const ledToWork = own.filter(({ hadWork, state }) => hadWork || state === 'in work').length;
      const confirmed = own.filter((one) => !one.hadWork && isConfirmed(one)).length;
      const share = (ledToWork + confirmed) / own.length;
      return {
        kind,
        decided: own.length,
        ledToWork,
        confirmed,
        share,
        isSeldomUseful: own.length >= FEWEST_DECIDED && share < LEAST_SHARE,
      };
    })
    .sort((a, b) => b.decided - a.decided || (a.kind < b.kind ? -1 : 1));
}

function isConfirmed({ state, dismissedReason }: DecidedFinding): boolean {
  return state === 'resolved' || (state === 'dismissed' && dismissedReason !== null && CONFIRMING.includes(dismissedReason));
}
